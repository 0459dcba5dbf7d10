/** Versions that the build puts in by name; see build.mjs. */
declare const MODEL_VERSION: string;
declare const TOOL_VERSION: string;

/** SHA-256 of the performance model's minified code. */
export const modelVersion: string = MODEL_VERSION;
/** Version of package.json. */
export const toolVersion: string = TOOL_VERSION;
