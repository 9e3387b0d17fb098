/** Colours of paper, where the editor's theme is not there to give them. */
const paper = `:root {
    --vscode-foreground: #222;
    --vscode-descriptionForeground: #555;
    --vscode-editor-background: #fff;
    --vscode-focusBorder: #005fb8;
    --vscode-textLink-foreground: #222;
    --vscode-charts-green: #2c7a2c;
    --vscode-editorError-foreground: #b3261e;
    --vscode-editorWarning-foreground: #7a5a00;
    --vscode-editorInfo-foreground: #0a58a8;
    --vscode-font-family: system-ui, sans-serif;
    --vscode-font-size: 13px;
    print-color-adjust: exact;
}
.bench { display: block; }
.look { position: static; }
.film { overflow: visible; flex-wrap: wrap; mask: none; }
.film > * { break-inside: avoid; }
section, .canvas, .steps > li { break-inside: avoid; }
img.drawn { display: block; width: 100%; }
@page { margin: 14mm; }`;

/**
 * The bench view as a page of its own, to be printed or sent: nothing in it runs, and nothing is fetched.
 *
 * @param body markup of our own page, which has no scripts of its own
 * @param style the style sheet of the page
 */
export function savedPage(title: string, body: string, style: string): string {
    const text = title.replace(/&/g, '&amp;').replace(/</g, '&lt;');
    return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; form-action 'none'; base-uri 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${text}</title>
<style>
${style.replaceAll('</', '<\\/')}
${paper}
</style>
</head>
<body class="vscode-light">
<main id="bench">
${body}
</main>
</body>
</html>
`;
}
