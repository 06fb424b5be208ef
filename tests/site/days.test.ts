// Day numbers of dates, against dates whose distance is known.

import { describe, expect, it } from "vitest";
import { dayNumber, monthOf } from "../../src/site/days.ts";

describe("day numbers", () => {
  it("count from 1 January 1970", () => {
    expect(dayNumber("1970-01-01")).toBe(0);
    // 10957 days: 30 years and the leap days of 1972, 76, 80, 84, 88, 92, 96 (COMPUTED).
    expect(dayNumber("2000-01-01")).toBe(10_957);
  });
  it("know a leap day", () => {
    expect((dayNumber("2028-03-01") ?? 0) - (dayNumber("2028-02-28") ?? 0)).toBe(2);
    expect((dayNumber("2027-03-01") ?? 0) - (dayNumber("2027-02-28") ?? 0)).toBe(1);
  });
  it("take nothing else for a date", () => {
    for (const text of ["May 2027", "2027-5-1", "", undefined, 7]) expect(dayNumber(text)).toBeNull();
  });
  it("give the month back", () => {
    expect(monthOf(dayNumber("2027-02-28") ?? 0)).toBe(2);
    expect(monthOf((dayNumber("2027-02-28") ?? 0) + 1)).toBe(3);
  });
});
