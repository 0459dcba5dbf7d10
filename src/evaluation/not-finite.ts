/** Finds numbers that mean nothing before they can be stored or ranked. */

/** Path of the first number in a value that is not finite, e.g. "running.traces.thrust[12]"; null when all are. */
export function pathOfNotFinite(value: unknown, path = ''): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : path;
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i++) {
      const item = value[i];
      if (typeof item === 'number' ? !Number.isFinite(item) : item !== null && typeof item === 'object') {
        const found = pathOfNotFinite(item, `${path}[${i}]`);
        if (found !== null) return found;
      }
    }
    return null;
  }
  if (value !== null && typeof value === 'object') {
    for (const name of Object.keys(value)) {
      const found = pathOfNotFinite((value as Record<string, unknown>)[name], path ? `${path}.${name}` : name);
      if (found !== null) return found;
    }
  }
  return null;
}
