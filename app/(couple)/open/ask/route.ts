import { cookies } from "next/headers";
import { askCoupleLink, markedBrowser, renewLink } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

/** A fresh link by mail. The answer never tells whether the key or the address is known. */
export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, values }) => {
    const key = textOf(values, "key");
    const email = textOf(values, "email").trim();
    // The link may have been one to the desk: what is mailed for it opens here alone. Nothing tells whether it was.
    const { browser, cookie } = markedBrowser(house, request.headers.get("cookie"));
    (await cookies()).set(cookie.name, cookie.value, cookie.options);
    if (key) await renewLink(house, { key, browser });
    else if (email) await askCoupleLink(house, { email });
    return see("/open?why=mailed");
  });
}
