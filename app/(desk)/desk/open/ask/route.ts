import { cookies } from "next/headers";
import { askDeskLink, markedBrowser } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

/** The answer never tells whether the address belongs to the desk. */
export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, values }) => {
    const email = textOf(values, "email").trim();
    if (!/^[^\s@]+@[^\s@]+$/.test(email) || email.length > 254) return see("/desk/open?why=email");
    const { browser, cookie } = markedBrowser(house, request.headers.get("cookie"));
    await askDeskLink(house, { email, browser });
    (await cookies()).set(cookie.name, cookie.value, cookie.options);
    return see("/desk/open?why=mailed");
  });
}
