/** Whether an HTML text keeps the rules of the HTML standard, judged by html-validate. */
import { HtmlValidate } from 'html-validate/node';

/**
 * One line for each fault: "line:column rule: message"; empty when there is none.
 * Rules of mere taste are off: how void elements and long texts are written, inline styles, script integrity.
 */
export async function htmlFaults(html: string, rules: Record<string, 'off' | 'error'> = {}): Promise<string[]> {
  const validator = new HtmlValidate({
    root: true,
    extends: ['html-validate:recommended'],
    rules: {
      'doctype-style': 'off',
      'no-inline-style': 'off',
      'long-title': 'off',
      'void-style': 'off',
      'no-trailing-whitespace': 'off',
      ...rules,
    },
  });
  const report = await validator.validateString(html);
  return report.results.flatMap((result) =>
    result.messages.map((message) => `${message.line}:${message.column} ${message.ruleId}: ${message.message}`),
  );
}
