import { create } from "qrcode";

/** The square code of a text as rows of dark (true) and light modules; level M, which forgives a crease. */
export function qrModules(text: string): readonly (readonly boolean[])[] {
  const { modules } = create(text, { errorCorrectionLevel: "M" });
  return Array.from({ length: modules.size }, (_, r) => Array.from({ length: modules.size }, (_, c) => modules.get(r, c) === 1));
}
