import { cookies } from "next/headers";
import { browserOf, openLink } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, values }) => {
    const opened = await openLink(house, { key: textOf(values, "key"), browser: browserOf(house, request.headers.get("cookie")) });
    if (!opened.ok) return see(opened.error.code === "link" && opened.error.why === "elsewhere" ? "/desk/open?why=elsewhere" : "/desk/open?why=link");
    const { cookie, purpose } = opened.value;
    (await cookies()).set(cookie.name, cookie.value, cookie.options);
    return see(purpose === "desk" ? "/desk" : "/request");
  });
}
