import type { LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { editionOf, isNewer } from '../edition';
import { isFile } from '../generated/ast';
import { whereOfPart } from '../lowering/places';
import { currentEdition } from '../vocabulary/editions';
import { replaceWith, say } from './say';

/** The one thing to be said of a file of a later edition; undefined for any other. */
export function newerEdition(document: LangiumDocument): Finding | undefined {
    if (!isNewer(document)) return undefined;
    return say('newer-edition', {
        message: phrase`This file is written for edition ${editionOf(document)}, and this version of Kerfbook knows editions up to ${currentEdition}: it is not checked, changed or planned. Update Kerfbook to work with it.`,
        where: whereOfPart(document.parseResult.value, 'edition'),
    });
}

/** An edition that there never was. */
export function* editionFindings(document: LangiumDocument): Iterable<Finding> {
    const file = document.parseResult.value;
    if (!isFile(file) || file.edition === undefined || file.edition >= currentEdition) return;
    const where = whereOfPart(file, 'edition');
    yield say('impossible-value', {
        message: phrase`There is no edition ${file.edition}: the first is ${currentEdition}.`,
        where,
        fixes: [replaceWith(where, String(currentEdition), phrase`Change to ${currentEdition}`, true)],
    });
}
