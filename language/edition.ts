import type { LangiumDocument } from 'langium';
import { isFile } from './generated/ast';
import { currentEdition } from './vocabulary/editions';

/** The edition that a file says it is written for; the first one where it says none. */
export function editionOf(document: LangiumDocument): number {
    const file = document.parseResult.value;
    return (isFile(file) ? file.edition : undefined) ?? currentEdition;
}

/** Whether a file is written for a later edition than this tool knows: it is read only, since what it says may mean something else. */
export function isNewer(document: LangiumDocument): boolean {
    return editionOf(document) > currentEdition;
}
