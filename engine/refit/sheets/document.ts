/** The sheets as one HTML file that needs nothing else: to print, or to carry on a stick. */
import type { UnitSystem } from '../../quantity/index.ts';
import type { Refit } from '../types.ts';
import { element, toHtml } from './node.ts';
import { SHEET_STYLE } from './style.ts';
import { surveySheets } from './survey-sheets.ts';

/** No script, nothing from elsewhere: the policy says so to the browser that opens it. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

export function surveyDocument(refit: Refit, system: UnitSystem = 'mm'): string {
  const title = toHtml(element('title', {}, `Survey: ${refit.name}`));
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="content-security-policy" content="${POLICY}">
${title}
<style>body { margin: 0; }${SHEET_STYLE}</style>
</head>
<body>
${toHtml(element('main', {}, surveySheets(refit, system)))}
</body>
</html>
`;
}
