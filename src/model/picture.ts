// The picture: what a drawing shows, as plane geometry with words. Made by `site/`, drawn by `report/`.

import type { Point } from "./reading.ts";

export interface PictureMark {
  /** Kind of the plan (`wall`, `tree`, ...), which decides hatch and line. */
  readonly kind: string;
  readonly name: string;
  /** What is written beside it. */
  readonly label: string;
  readonly form: "point" | "line" | "outline" | "circle";
  readonly points: readonly Point[];
  readonly radius?: number;
  /** Drawn width in metres where a line has one (a wall's thickness, a track). */
  readonly width?: number;
  readonly holes?: readonly (readonly Point[])[];
  readonly existing: boolean;
}

export interface Picture {
  readonly title: string;
  readonly stage: string;
  readonly marks: readonly PictureMark[];
  /** Angle from the plan's north (up) to true north, radians clockwise; null where the plan has no earth tie. */
  readonly trueNorth: number | null;
  /** `ways`: only where vehicles go is drawn of it. */
  readonly shows?: "ways";
  /** The same plan at earlier stages at which something is found that is past at this one. */
  readonly earlier?: readonly Picture[];
}
