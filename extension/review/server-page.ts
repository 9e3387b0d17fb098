import { pageStyle, wrapped } from '../../shared/review/html/page';

/** The editor's own colours and letters. Pictures stay on paper, with a frame where the theme draws frames. */
const colours = `
:root { --ink: var(--vscode-foreground); --quiet: var(--vscode-descriptionForeground); --ground: var(--vscode-editor-background); --rule: var(--vscode-widget-border, rgba(128, 128, 128, .35)); --heading: var(--vscode-foreground); --was: var(--vscode-gitDecoration-deletedResourceForeground, #a33a12); --now: var(--vscode-gitDecoration-addedResourceForeground, #0b5d3b); --differs: var(--vscode-charts-purple, #8a1c6b) }
body { font: 13px/1.5 var(--vscode-font-family, sans-serif) }
`;

const overrides = `
body { padding: 16px 20px }
a { color: var(--vscode-textLink-foreground) } a:hover { color: var(--vscode-textLink-activeForeground) } a:focus-visible { outline: 1px solid var(--vscode-focusBorder); outline-offset: 2px }
h1 a, h3 a { color: inherit; text-decoration-color: var(--quiet); text-decoration-thickness: 1px; text-underline-offset: 3px }
code { font-family: var(--vscode-editor-font-family, monospace); color: inherit; background: none; padding: 0 }
body.vscode-high-contrast, body.vscode-high-contrast-light { --rule: var(--vscode-contrastBorder); --quiet: var(--vscode-foreground); --was: var(--vscode-foreground); --now: var(--vscode-foreground) }
body.vscode-high-contrast del, body.vscode-high-contrast-light del { text-decoration: line-through }
body.vscode-high-contrast .picture, body.vscode-high-contrast .section, body.vscode-high-contrast-light .picture, body.vscode-high-contrast-light .section { border: 1px solid var(--vscode-contrastBorder) }
.section { background: var(--ground) }
.sorry { max-width: 46em } .bar { margin: 0 0 12px }
@media (max-width: 520px) { body { padding: 12px } }
`;

/** A page made by the server: nothing runs in it, nothing is loaded, and its one style has this page's nonce. */
export function serverPage(title: string, body: string): string {
    const nonce = crypto.randomUUID().replaceAll('-', '');
    return wrapped(title, body, {
        policy: `default-src 'none'; style-src 'nonce-${nonce}'; form-action 'none'; base-uri 'none'`,
        style: `<style nonce="${nonce}">${colours}${pageStyle}${overrides}</style>`,
    });
}
