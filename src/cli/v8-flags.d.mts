export const V8_FLAGS: readonly string[];
