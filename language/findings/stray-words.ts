import type { LangiumDocument, ReferenceInfo } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { nearest } from '../../shared/recipe/nearest';
import { phrase } from '../../shared/recipe/phrase';
import { isBurnt } from '../generated/ast';
import { whereOfCst } from '../lowering/places';
import { lineWords } from '../vocabulary/blocks';
import { burntParts } from '../vocabulary/run-properties';
import { namesInConflicts } from './lost-names';
import { replaceWith, say } from './say';

const words = [...new Set([...lineWords('Run'), ...burntParts.map((part) => part.words), 'of'])];

/**
 * In a run a line can begin with the name of a step, so that a mistyped word of the language is taken for one. It is
 * said as what it is. Needs a linked document.
 */
export function* strayWords(document: LangiumDocument): Iterable<Finding> {
    const isInConflict = namesInConflicts(document);
    for (const reference of document.references) {
        const info = reference.error?.info as ReferenceInfo | undefined;
        const meant = info && wordMeant(info);
        if (info === undefined || meant === undefined || isInConflict(reference.$refText)) continue;
        const where = whereOfCst(info.container, reference.$refNode);
        yield say('syntax', {
            message: phrase`There is no \`${reference.$refText}\` in a run. Did you mean \`${meant}\`?`,
            where,
            fixes: [replaceWith(where, meant, phrase`Change to \`${meant}\``, true)],
        });
    }
}

/** The word of the language that an unknown name of a step in a run was most likely meant to be. */
export function wordMeant({ container, property, reference }: ReferenceInfo): string | undefined {
    return isBurnt(container) && property === 'step' ? nearest(reference.$refText, words) : undefined;
}
