import { h } from 'preact';
import { safeFileName } from '../../../store/file-name.ts';
import type { Units } from '../../../units/index.ts';
import type { StakingSheet } from './sheet-parts.ts';
import { StakingPaper } from './staking-paper.tsx';
import { escaped, staticHtml } from './static-html.ts';

/** What browsers let pages share; also of a download. */
const HTML_TYPE = 'text/html';

/**
 * The staking sheet as one page that needs nothing else: no script, no picture, no font of another file.
 *
 * @param style rules for it; of our own making, so that none of it is escaped
 */
export function sheetHtml(sheet: StakingSheet, units: Units, style: string): string {
  const policy = "default-src 'none'; style-src 'unsafe-inline'";
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(`${sheet.job}: staking sheet`)}</title>
<style>${style}</style>
</head>
<body>
${staticHtml(h(StakingPaper, { sheet, units }))}
</body>
</html>
`;
}

/** The same as a file to share or to keep: `Garden room.staking.html`. */
export const sheetFile = (sheet: StakingSheet, units: Units, style: string): File =>
  new File([sheetHtml(sheet, units, style)], safeFileName(sheet.job, 'staking.html'), { type: HTML_TYPE });
