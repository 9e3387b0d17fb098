import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import type { ArtNames } from '../../shared/art/art-names';
import { pickText } from '../../shared/recipe/pick-text';

/** Parts of an art file that can be picked by `#id` or `.class`, as they are written: `#"left wing"` where a name has other signs than letters and digits. */
export function proposePicks({ ids, classes }: ArtNames): (Partial<CompletionItem> & { readonly label: string })[] {
    const kind = CompletionItemKind.EnumMember;
    return [
        ...ids.map((id) => ({ label: pickText(`#${id}`), kind, detail: 'the part with this id', sortText: `03${id}` })),
        ...classes.map((name) => ({
            label: pickText(`.${name}`),
            kind,
            detail: 'all parts of this class',
            sortText: `04${name}`,
        })),
    ];
}
