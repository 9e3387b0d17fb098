import type { LangiumDocument } from 'langium';
import type { Finding } from '../shared/recipe/finding';
import { syntaxFindings } from './findings/syntax';
import { unknownNames } from './findings/unknown-name';
import type { KerfServices } from './module';

const computed = new WeakMap<object, readonly Finding[]>();

/**
 * All that can be said of the text by itself, in the order of the text: broken lines, names that lead
 * nowhere, numbers that do not fit. Needs a linked document; never throws. Computed once a linking.
 */
export function textFindings(document: LangiumDocument, services: KerfServices): readonly Finding[] {
    // Relinking replaces the list of references, so it stands for this state of the document.
    const known = computed.get(document.references);
    if (known !== undefined) return known;
    const findings = [...syntaxFindings(document), ...unknownNames(document, services)];
    findings.sort((a, b) => a.where.offset - b.where.offset);
    computed.set(document.references, findings);
    return findings;
}
