/** What a screen reader, a keyboard and weak eyes would trip over in an HTML file, found by axe-core in the found browser. */
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import type { Page } from 'puppeteer';
import type { ProvenBrowser } from '../../src/report/printing/find-browser.ts';
import { findBrowser } from '../../src/report/printing/find-browser.ts';

export type Scheme = 'light' | 'dark';

export interface AxeFinding {
  rule: string;
  impact: string;
  help: string;
  /** Each offending element: its selector, its first characters, and what to mend. */
  nodes: { target: string; html: string; mend: string }[];
}

export interface AxeResult {
  violations: AxeFinding[];
  /** What axe could not decide, e.g. contrast over a picture. */
  undecided: AxeFinding[];
  /** Addresses that the page asked for beyond itself and data:. */
  requests: string[];
  /** Errors that scripts of the page threw. */
  scriptErrors: string[];
  /** Rules that were applied, so that a test can prove that it looked. */
  passes: string[];
}

/**
 * Loads the file twice, with light and with dark preferred, and lets axe judge each with all WCAG 2 A and AA rules and
 * its best practices. Scripts of the page run; nothing beyond the file and data: addresses is loaded.
 * @param width CSS pixels of the window
 */
export async function axeFindings(
  htmlFile: string,
  browser: ProvenBrowser | null = null,
  width = 1280,
): Promise<Record<Scheme, AxeResult>> {
  const opened = await (browser ?? (await findBrowser())).open();
  try {
    const url = pathToFileURL(path.resolve(htmlFile)).href;
    const light = await judge(await opened.newPage(), url, 'light', width);
    const dark = await judge(await opened.newPage(), url, 'dark', width);
    return { light, dark };
  } finally {
    await opened.close();
  }
}

async function judge(page: Page, url: string, scheme: Scheme, width: number): Promise<AxeResult> {
  const requests: string[] = [];
  const scriptErrors: string[] = [];
  await page.setViewport({ width, height: 900 });
  await page.emulateMediaFeatures([
    { name: 'prefers-color-scheme', value: scheme },
    // Moving colours would be measured half-way.
    { name: 'prefers-reduced-motion', value: 'reduce' },
  ]);
  await page.setRequestInterception(true);
  page.on('request', (request) => {
    if (request.url() === url || request.url().startsWith('data:')) return void request.continue();
    requests.push(request.url());
    void request.abort();
  });
  page.on('pageerror', (error) => scriptErrors.push(String(error)));
  await page.goto(url, { waitUntil: 'load' });
  await page.evaluate(axe.source);
  const results = (await page.evaluate(
    "document.fonts.ready.then(() => axe.run(document, { resultTypes: ['violations', 'incomplete'], elementRef: false }))",
  )) as axe.AxeResults;
  await page.close();
  return {
    violations: results.violations.map(finding),
    undecided: results.incomplete.map(finding),
    requests,
    scriptErrors,
    passes: results.passes.map((rule) => rule.id),
  };
}

function finding(result: axe.Result): AxeFinding {
  return {
    rule: result.id,
    impact: result.impact ?? 'unknown',
    help: result.help,
    nodes: result.nodes.map((node) => ({
      target: node.target.flat().join(' '),
      html: node.html.slice(0, 200),
      mend: node.failureSummary ?? '',
    })),
  };
}
