import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import type { ArtNames } from '../../shared/art/art-names';
import { KerfTerminals } from '../generated/ast';

const pick = new RegExp(`^(?:${KerfTerminals.HASH.source}|${KerfTerminals.DOTTED.source})$`);

/** Parts of an art file that can be picked by `#id` or `.class`, as far as the language can write their names. */
export function proposePicks({ ids, classes }: ArtNames): (Partial<CompletionItem> & { readonly label: string })[] {
    const kind = CompletionItemKind.EnumMember;
    return [
        ...ids.map((id) => ({ label: `#${id}`, kind, detail: 'the part with this id', sortText: `03${id}` })),
        ...classes.map((name) => ({ label: `.${name}`, kind, detail: 'all parts of this class', sortText: `04${name}` })),
    ].filter(({ label }) => pick.test(label));
}
