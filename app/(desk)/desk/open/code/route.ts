import { cookies } from "next/headers";
import { browserOf, openByCode } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

/** The code of a sign-in mail, typed where the mail was not read. */
export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, values }) => {
    const opened = await openByCode(house, { email: textOf(values, "person").slice(0, 254), code: textOf(values, "code").slice(0, 40), browser: browserOf(house, request.headers.get("cookie")) });
    if (!opened.ok) return see("/desk/open?why=code");
    const { cookie } = opened.value;
    (await cookies()).set(cookie.name, cookie.value, cookie.options);
    return see("/desk");
  });
}
