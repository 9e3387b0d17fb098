import { escapeMarkup } from '../../sheets/escape';

/** A page that needs nothing from anywhere else, and on which nothing can run. */
export function page(title: string, body: string): string {
    return wrapped(title, body, {
        policy: "default-src 'none'; style-src 'unsafe-inline'",
        style: `<style>${paper}${pageStyle}</style>`,
    });
}

export interface Wrapping {
    /** Content-Security-Policy. */
    readonly policy: string;
    /** The style elements, which set the colours too. */
    readonly style: string;
}

export function wrapped(title: string, body: string, { policy, style }: Wrapping): string {
    return [
        '<!doctype html>',
        '<html lang="en">',
        '<head>',
        '<meta charset="utf-8">',
        `<meta http-equiv="Content-Security-Policy" content="${escapeMarkup(policy)}">`,
        '<meta name="viewport" content="width=device-width">',
        `<title>${escapeMarkup(title)}</title>`,
        style,
        '</head>',
        `<body><main>${body}</main></body>`,
        '</html>',
        '',
    ].join('\n');
}

/** Ink on paper. */
const paper = `
:root { --ink: #1d1a16; --quiet: #5a5347; --ground: #fff; --rule: #d8d2c6; --heading: #1d1a16; --was: #6b2b1a; --now: #1c4a2f; --differs: #8a1c6b }
@media (prefers-color-scheme: dark) { :root { color-scheme: dark; --ink: #ece6da; --quiet: #b5ac9c; --ground: #1d1a16; --rule: #4a443a; --heading: #ece6da; --was: #f0a893; --now: #9fd8b4; --differs: #e58fca } }
body { font: 15px/1.45 Georgia, serif }
article > h1 { position: sticky; top: 0; z-index: 1; background: var(--ground); padding: 4px 0 }
@media print { article > h1 { position: static } }
`;

/** Everything but the colours and the letters. Pictures are always drawn on paper. */
export const pageStyle = `
* { box-sizing: border-box }
body { color: var(--ink); background: var(--ground); max-width: 1080px; margin: 0 auto; padding: 24px }
h1 { font-size: 22px; margin: 0 0 4px } h2 { font-size: 17px; margin: 28px 0 8px; border-bottom: 1px solid var(--heading) } h3 { font-size: 15px; margin: 16px 0 4px }
.from { margin: 0; color: var(--quiet) } article + article { margin-top: 48px }
table { border-collapse: collapse; width: 100% } th, td { text-align: left; vertical-align: top; padding: 3px 10px 3px 0; border-bottom: 1px solid var(--rule) }
.changes { table-layout: fixed } .changes th:first-child { width: 28% } .changes th:last-child { width: 20% } .changes td { overflow-wrap: anywhere } .worse, .error, .warning { color: var(--was) } .better { color: var(--now) } .index ul { list-style: none; padding-left: 0 } .index li { padding: 2px 0 } .index a { color: inherit }
 .changes tr.follows td:first-child, .beside tr.follows th { padding-left: 18px; font-style: italic } del, ins { text-decoration: none } del { color: var(--was) } ins { color: var(--now) }
.beside tr.group th { padding-top: 12px; border-bottom-color: var(--heading) } .beside tbody th { font-weight: normal } .beside tr.group th { font-weight: bold } .wide { overflow-x: auto }
ul { margin: 4px 0; padding-left: 20px } .sign { font-family: monospace; font-weight: bold; white-space: pre }
.film > tbody > tr.differs > th { border-left: 6px solid var(--differs); padding-left: 10px } .film > tbody > tr > th { width: 22%; font-weight: normal; padding-left: 16px }
.film td { width: 39% } figure { margin: 0 0 10px } figcaption { font-size: 13px; color: var(--quiet) }
.picture { display: block; width: 100%; max-height: 260px; background: #f3efe7 } .section { display: block; width: 100%; height: 46px; margin-top: 3px }
svg.plot { display: block; width: 100%; max-width: 640px; border: 1px solid var(--rule) } .note { color: var(--quiet); font-style: italic } .key { display: flex; flex-wrap: wrap; gap: 18px; font-size: 13px } .key svg { width: 26px; height: 14px; border: 1px solid #1d1a16; background: #fff; vertical-align: -2px }
.defs { position: absolute; width: 0; height: 0 }
.film .picture { background: none }
@media (max-width: 520px) { body { padding: 12px } th, td { padding-right: 6px; font-size: 12px } .film > tbody > tr, .film > thead > tr { display: grid; grid-template-columns: 1fr 1fr; column-gap: 8px } .film > thead > tr > th:first-child, .film > tbody > tr > th { grid-column: 1 / -1; width: auto } .film > tbody > tr > td { width: auto; min-width: 0 } svg.plot text { font-size: 18px } }
@media print { body { padding: 0; max-width: none } tr, figure { break-inside: avoid } }
`;
