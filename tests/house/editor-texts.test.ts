import { parseSync } from 'vite';
import { expect, test } from 'vitest';
import { sourceFiles } from './source-files';

/** Not for a reader's language: markup, styles and policies, words of the recipe language, names of channels, kinds of the program's own. */
const ownWords = /^\s*<|default-src|[{}]|^\$\(|^through (yes|no)$|^tone \S*$|^Kerfbook$|^kerfbook \S*$|^every file$/;

interface Parsed {
    readonly type?: string;
    readonly start: number;
    readonly end: number;
    readonly value?: unknown;
    readonly callee?: Parsed;
    readonly arguments?: readonly Parsed[];
    readonly quasis?: readonly { readonly value: { readonly cooked: string } }[];
    readonly key?: unknown;
}

/** The words of a literal or the fixed parts of a template, where they are more than one word, or one that begins with a capital. */
function saidBy({ type, value, quasis }: Parsed): string | undefined {
    const words = type === 'TemplateLiteral' ? quasis!.map((part) => part.value.cooked).join('…') : value;
    if (typeof words !== 'string' || (type !== 'Literal' && type !== 'TemplateLiteral') || ownWords.test(words.trim()))
        return undefined;
    return /^[A-Z][a-z]+$|[A-Za-z]{2}.* |[A-Za-z]+ [A-Za-z]/.test(words.trim()) ? words : undefined;
}

/** Where somebody is told something that no catalogue of the editor's could translate. */
function bare(path: string, source: string): string[] {
    const found: string[] = [];
    const waiting: unknown[] = [parseSync(path, source).program];
    while (waiting.length > 0) {
        const node = waiting.pop();
        if (Array.isArray(node)) waiting.push(...node);
        if (typeof node !== 'object' || node === null || !('type' in node)) continue;
        const each = node as Parsed;
        if (/^(Import|ExportAll|TS)/.test(each.type!) && each.type !== 'TSAsExpression') continue;
        const isText = each.callee !== undefined && source.slice(each.callee.start, each.callee.end).endsWith('l10n.t');
        if (isText) waiting.push(...each.arguments!.slice(1));
        else {
            const said = saidBy(each);
            if (said !== undefined) found.push(`${path}:${source.slice(0, each.start).split('\n').length}: ${said}`);
            const { key, ...rest } = each;
            waiting.push(...Object.values(rest));
        }
    }
    return found;
}

test('each text that the editor shows for the extension goes through its catalogue', () => {
    expect(
        bare('own.ts', "say('Nothing was written.'); say(vscode.l10n.t('{0} files', count)); say(`some files left`);"),
    ).toEqual(['own.ts:1: some files left', 'own.ts:1: Nothing was written.']);
    // The page of the bench view is no part of the editor and has no catalogue of it; what the page for a tablet says comes with it.
    const files = sourceFiles('extension').filter(
        ({ path }) => !path.startsWith('extension/tablet/') && !path.startsWith('extension/bench/webview/'),
    );
    expect(files.length).toBeGreaterThan(60);
    expect(files.flatMap(({ path, text }) => bare(path, text))).toEqual([]);
});
