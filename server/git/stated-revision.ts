import { namePattern } from '../../shared/recipe/name';

/** Comments, texts, braces, and words or whole numbers. */
const part = new RegExp(`//[^\\n]*|/\\*[\\s\\S]*?\\*/|"(?:\\\\.|[^"\\\\\\n])*"|[{}]|${namePattern.source}|\\d+`, 'g');

/**
 * Revisions that a recipe of a text may have had, found without reading the text as a language: thousands of old versions are looked
 * through. Undefined where only that can tell, since the recipe is based on one of another file; empty where there is no such recipe.
 */
export function statedRevisions(text: string, recipe: string): ReadonlySet<number> | undefined {
    const parts = (text.match(part) ?? []).filter((each) => !/^(?:\/[/*]|")/.test(each));
    return revisionsAmong(parts, recipe, new Set());
}

function revisionsAmong(parts: readonly string[], recipe: string, seen: ReadonlySet<string>): ReadonlySet<number> | undefined {
    const found = new Set<number>();
    for (let i = 0; i < parts.length; i += 1) {
        if (parts[i] !== 'recipe' || parts[i + 1] !== recipe) continue;
        const base = parts[i + 2] === 'based' ? parts[i + 4] : undefined;
        const { stated, end } = statedInBlock(parts, i + (base === undefined ? 2 : 5));
        i = end;
        if (stated === undefined && base !== undefined && !seen.has(base)) {
            // What a variant does not say, it has from its base.
            const inherited = revisionsAmong(parts, base, new Set([...seen, recipe]));
            if (inherited === undefined || inherited.size === 0) return undefined;
            for (const revision of inherited) found.add(revision);
        } else {
            // Without a word of it, it is 1.
            found.add(stated ?? 1);
        }
    }
    return found;
}

/** The first issue that a block states, its inner blocks aside, and where it ends. */
function statedInBlock(parts: readonly string[], from: number): { readonly stated: number | undefined; readonly end: number } {
    let depth = 0;
    let stated: number | undefined;
    for (let i = from; i < parts.length; i += 1) {
        if (parts[i] === '{') depth += 1;
        else if (parts[i] === '}') depth -= 1;
        if (depth <= 0) return { stated, end: i };
        const isIssue = parts[i] === 'issue' || parts[i] === 'revision';
        if (depth === 1 && isIssue && /^\d+$/.test(parts[i + 1] ?? '')) stated ??= Number(parts[i + 1]);
    }
    return { stated, end: parts.length };
}
