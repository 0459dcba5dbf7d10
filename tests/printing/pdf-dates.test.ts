import { describe, expect, it } from 'vitest';
import { pdfDate, setPdfDates } from '../../src/report/printing/pdf-dates.ts';

function pdf(info: string): Buffer {
  return Buffer.from(`%PDF-1.4\n1 0 obj\n<<${info}>>\nendobj\ntrailer\n<</Size 2\n/Info 1 0 R>>\n%%EOF`, 'latin1');
}
const CREATED = "/CreationDate (D:20261125092857+00'00')";
const MODIFIED = "/ModDate (D:20261125092857+00'00')";

describe('setPdfDates', () => {
  it('rewrites both dates and nothing else', () => {
    const bytes = pdf(`/Title (a)\n${CREATED}\n${MODIFIED}`);
    const length = bytes.length;
    setPdfDates(bytes, '2026-01-31T23:30:00+01:00');
    expect(bytes.length).toBe(length);
    expect(bytes.toString('latin1')).toBe(
      pdf(`/Title (a)\n${CREATED}\n${MODIFIED}`).toString('latin1').replaceAll('20261125092857', '20260131223000'),
    );
  });

  it('leaves a title alone that looks like a date', () => {
    const title = "/Title (/ModDate \\(D:20000101000000+00'00'\\))";
    const bytes = pdf(`${title}\n${CREATED}\n${MODIFIED}`);
    setPdfDates(bytes, '2026-01-31');
    expect(bytes.toString('latin1')).toContain(title);
  });

  it('refuses what it does not know', () => {
    expect(() => setPdfDates(pdf(CREATED), '2026-01-31')).toThrow(/1 were found/);
    expect(() => setPdfDates(Buffer.from('%PDF-1.4 trailer'), '2026-01-31')).toThrow(/no document information/);
    expect(() => pdfDate('yesterday')).toThrow(/ISO 8601/);
    expect(() => pdfDate('2026-13-45')).toThrow(/ISO 8601/);
  });
});
