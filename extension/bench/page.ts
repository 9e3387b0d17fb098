import * as vscode from 'vscode';

/** The bench view's page: scripts only with this page's nonce, styles only from our own folder, pictures only as data, nothing from anywhere else. */
export function benchPage(webview: vscode.Webview, dist: vscode.Uri, kept: object): string {
    const nonce = crypto.randomUUID().replaceAll('-', '');
    const script = webview.asWebviewUri(vscode.Uri.joinPath(dist, 'bench.js'));
    const style = webview.asWebviewUri(vscode.Uri.joinPath(dist, 'bench.css'));
    const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'; img-src data:; form-action 'none'; base-uri 'none'`;
    return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Bench view</title>
<link rel="stylesheet" href="${style}">
</head>
<body data-kept="${escapeAttribute(JSON.stringify(kept))}">
<main id="bench"></main>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

function escapeAttribute(text: string): string {
    return text.replace(/&/g, '&amp;').replace(/"/g, '&quot;').replace(/</g, '&lt;');
}
