/** "reed valves, no augmenter" → "Reed valves, no augmenter", for headings and beginnings of sentences. */
export function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
