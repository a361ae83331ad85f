import { cookies } from "next/headers";
import { signOut } from "@/lib/service";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "look", async ({ house }) => {
    const gone = await signOut(house, { cookie: request.headers.get("cookie"), side: "look" });
    (await cookies()).set(gone.name, gone.value, gone.options);
    return see("/");
  });
}
