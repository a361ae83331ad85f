import { isFromOurPages } from "../access";
import type { House } from "./house";

/** Did a form that changes something come from our own pages? The server asks this of every such request too. */
export function sameOrigin(house: Pick<House, "origin">, request: { readonly method: string; readonly headers: Pick<Headers, "get"> }): boolean {
  const header = (name: string): string | undefined => request.headers.get(name) ?? undefined;
  return isFromOurPages({
    method: request.method, origin: header("origin"), fetchSite: header("sec-fetch-site"), host: header("host"), ours: house.origin,
  });
}
