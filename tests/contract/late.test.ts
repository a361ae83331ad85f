import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { larkspur, tidewheel } from "../../lib/demo";
import { resultSchema } from "../../lib/layout";
import { call, folder } from "./kit/call";
import { meal } from "./kit/day";

const files = folder();
const brief = (adults: number) => ({ format: "marquetry.brief/1", package: "dry-hire", date: "2027-06-12", guests: { adults }, ceremony: { here: false }, meal: { top: "none" }, music: { by: "none" } });
let venue = "", answers = "", more = "", layout = "";
beforeAll(() => {
  venue = files.write("mill.json", tidewheel);
  answers = files.write("brief.json", brief(16));
  more = files.write("more.json", brief(18));
  layout = files.write("layout.json", meal());
});
afterAll(() => { files.clear(); });

describe("repair and change", () => {
  it("leaves a layout without faults as it is, and prints a result with nothing moved", async () => {
    const { code, out } = await call("repair", venue, answers, layout);
    expect(code).toBe(0);
    expect(resultSchema.parse(JSON.parse(out))).toMatchObject({ status: "arranged", moved: [] });
  });

  it("takes a new brief on an agreed layout and names what is moved", async () => {
    const { code, out } = await call("change", venue, layout, more);
    const result = resultSchema.parse(JSON.parse(out));
    expect(code).toBe(0);
    expect(result.layouts[0]?.scenes.find((s) => s.id === "meal")?.seats).toBeGreaterThanOrEqual(18);
    expect(result.moved).toBeDefined();
  });

  it("refuses a fixed piece that the layout lacks, with nothing on standard output", async () => {
    const { code, out, lines } = await call("repair", venue, answers, layout, "--fixed", "nobody");
    expect([code, out]).toEqual([2, ""]);
    expect(lines[0]).toMatch(/^command line: --fixed: "nobody"/);
  });

  it("refuses a layout of another venue", async () => {
    const { code, out } = await call("change", files.write("barn.json", larkspur), layout, more);
    expect([code, out]).toEqual([2, ""]);
  });
});
