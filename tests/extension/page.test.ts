import { expect, test, vi } from 'vitest';
import type * as vscode from 'vscode';

vi.mock('vscode', () => ({ Uri: { joinPath: (base: string, ...parts: string[]) => [base, ...parts].join('/') } }));
const { benchPage } = await import('../../extension/bench/page');

const webview = { cspSource: 'https://own.example', asWebviewUri: (uri: unknown) => uri } as unknown as vscode.Webview;
const page = (kept: object = {}) => benchPage(webview, 'dist' as unknown as vscode.Uri, kept);
const policyOf = (html: string) => /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(html)![1]!;

test('nothing is allowed but what is named: own styles, the one script, pictures that are data', () => {
    const policy = policyOf(page());
    const nonce = /'nonce-([\da-f]+)'/.exec(policy)![1]!;
    expect(policy.replace(nonce, 'N').split('; ').sort()).toEqual([
        "base-uri 'none'",
        "default-src 'none'",
        "form-action 'none'",
        'img-src data:',
        "script-src 'nonce-N'",
        'style-src https://own.example',
    ]);
    expect(policy).not.toMatch(/unsafe/);
});

test('each page has a nonce of its own, long enough not to be guessed', () => {
    const nonces = new Set(Array.from({ length: 50 }, () => /nonce="([\da-f]{32})"/.exec(page())![1]!));
    expect(nonces.size).toBe(50);
});

test('what was kept cannot break out of its attribute', () => {
    const wild = `"><script>alert(1)</script>&quot;`;
    const html = page({ uri: wild });
    expect(html.match(/<script/g)).toHaveLength(1);
    const written = /data-kept="([^"]*)"/.exec(html)![1]!;
    const read = written.replaceAll('&quot;', '"').replaceAll('&lt;', '<').replaceAll('&amp;', '&');
    expect(JSON.parse(read)).toEqual({ uri: wild });
});
