import { describe, expect, it } from "vitest";
import { tidewheel } from "../../../lib/demo";
import { briefSchema } from "../../../lib/brief";
import { bench } from "../../../lib/server/bench";
import { venueSchema } from "../../../lib/venue";
import { meal } from "../../contract/kit/day";

const venue = venueSchema.parse(tidewheel), layout = meal();
const brief = briefSchema.parse({ format: "marquetry.brief/1", package: "dry-hire", date: "2027-06-12", reference: "QK7M-34", couple: ["Ana", "Bo"], guests: { adults: 16 } });
const wordsOf = (svg: string): string => svg.replace(/<[^>]+>/g, " ").replace(/\s+/g, " ");

describe("a plan as a sheet of its own", () => {
  it("bears the booking's reference, and who drew and who agreed it, as the papers do", async () => {
    const sheet = wordsOf(await bench.planSvg({ venue, layout, scene: "meal", sheet: true, brief, revision: 2, fingerprint: "abc".repeat(20), reference: "QK7M-34", drawnOn: "2027-01-10", agreedOn: "2027-02-03" }));
    for (const text of ["QK7M-34", "drawn by Marquetry, 10 January 2027", "agreed by Tidewheel Mill, 3 February 2027"]) expect(sheet).toContain(text);
  });

  it("says nothing of an agreement where there is none", async () => {
    const sheet = wordsOf(await bench.planSvg({ venue, layout, scene: "meal", sheet: true, brief, reference: "QK7M-34", drawnOn: "2027-01-10" }));
    expect(sheet).toContain("drawn by Marquetry, 10 January 2027");
    expect(sheet).not.toContain("agreed by");
  });
});
