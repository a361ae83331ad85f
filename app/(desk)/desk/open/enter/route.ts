import { cookies } from "next/headers";
import { openLink } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, values }) => {
    const opened = await openLink(house, { key: textOf(values, "key") });
    if (!opened.ok) return see("/desk/open?why=link");
    const { cookie, purpose } = opened.value;
    (await cookies()).set(cookie.name, cookie.value, cookie.options);
    return see(purpose === "desk" ? "/desk" : "/request");
  });
}
