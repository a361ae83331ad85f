import { afterEach, describe, expect, it, vi } from "vitest";
import { hold, holdBoth, taken } from "../../../components/plan/markup";

describe("a drawing that the server holds for a page", () => {
  afterEach(() => { vi.useRealTimers(); vi.unstubAllGlobals(); });

  it("is handed out once, to whom has its ticket", () => {
    const { wide, narrow } = holdBoth({ wide: "<svg>wide</svg>", narrow: "<svg>narrow</svg>" });
    expect([taken(narrow), taken(wide), taken(wide)]).toEqual(["<svg>narrow</svg>", "<svg>wide</svg>", ""]);
  });

  it("is nothing where there is none", () => {
    expect([hold(""), taken("")]).toEqual(["", ""]);
  });

  it("is let go of where no page asks for it", () => {
    vi.useFakeTimers();
    const ticket = hold("<svg/>");
    vi.advanceTimersByTime(60_001);
    expect(taken(ticket)).toBe("");
  });

  it("is not asked for in a browser, where it stands in the page", () => {
    const ticket = hold("<svg/>");
    vi.stubGlobal("window", {});
    expect(taken(ticket)).toBe("");
    vi.unstubAllGlobals();
    expect(taken(ticket)).toBe("<svg/>");
  });
});
