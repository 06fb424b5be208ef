// The version, from the package.

import packaged from "../../package.json" with { type: "json" };

export const version: string = packaged.version;
