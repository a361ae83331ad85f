import { describe, expect, it } from "vitest";
import { heldTime } from "../../../lib/booking";

describe("how long rooms are held", () => {
  it("is the whole day, from six to six, where nothing is known of its hours", () => {
    expect(heldTime({ date: "2027-12-31" })).toEqual({ starts: "2027-12-31 06:00", ends: "2028-01-01 06:00" });
    expect(heldTime({ date: "2027-06-12", hours: 8 })).toEqual({ starts: "2027-06-12 06:00", ends: "2027-06-13 06:00" });
  });
  it("is as many days as a longer package takes", () => {
    expect(heldTime({ date: "2027-06-12", hours: 49 })).toEqual({ starts: "2027-06-12 06:00", ends: "2027-06-15 06:00" });
  });
  it("follows the couple's hours before the package's, and runs past midnight where it ends before it starts", () => {
    expect(heldTime({ date: "2027-06-12", hours: { from: "09:00", to: "23:00" } })).toEqual({ starts: "2027-06-12 09:00", ends: "2027-06-12 23:00" });
    expect(heldTime({ date: "2027-06-12", hours: { from: "09:00", to: "23:00" }, times: { access: "10:30", clear: "01:00" } })).toEqual({ starts: "2027-06-12 10:30", ends: "2027-06-13 01:00" });
    expect(heldTime({ date: "2027-06-12", times: { access: "10:30" } }).starts).toBe("2027-06-12 06:00");
  });
});
