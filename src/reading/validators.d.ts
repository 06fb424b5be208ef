// The schema checks that the program needs, as `tests/house/compile-validators.ts` compiles them from `schemas/`.

import type { Validator } from "./validate.ts";

export declare const plan: Validator;
export declare const part: Validator;
export declare const card: Validator;
export declare const sources: Validator;
export declare const places: Validator;
