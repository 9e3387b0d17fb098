import type { AstNode, LangiumDocument } from 'langium';
import type { Finding } from '../shared/recipe/finding';
import { allowFindings } from './findings/allows';
import { withoutConsequences } from './findings/consequences';
import { valueFindings } from './findings/counts';
import { duplicateNames, duplicateProperties } from './findings/duplicates';
import { kindCycles } from './findings/kind-cycles';
import { lostNames } from './findings/lost-names';
import { missingProperties } from './findings/missing-properties';
import { mistypedDeclarations } from './findings/mistyped';
import { numberFindings } from './findings/numbers';
import { priceFindings, shopFindings, shopsFindings } from './findings/shop';
import { strayWords } from './findings/stray-words';
import { syntaxFindings } from './findings/syntax';
import { unknownNames } from './findings/unknown-name';
import { unresolvedNames } from './findings/unresolved';
import { unusedNames } from './findings/unused-names';
import { useFindings } from './findings/use';
import { variantFindings } from './findings/variants';
import { isAmount, isRecipe } from './generated/ast';
import { KeptOn } from './kept-on';
import { shopOf, shopsInSight } from './lowering/shop';
import type { KerfServices } from './module';
import { treeOf } from './names/tree';
import { adjustingBlocks } from './variants/adjusting-blocks';

const computed = new KeptOn<object, readonly Finding[]>();

/**
 * All that can be said of the text by itself, in the order of the text: broken lines, names that lead
 * nowhere, numbers that do not fit. Needs a linked document; never throws. Computed once a linking.
 */
export function textFindings(document: LangiumDocument, services: KerfServices): readonly Finding[] {
    // Relinking replaces the list of references, so it stands for this state of the document.
    const known = computed.get(document.references);
    if (known !== undefined) return known;
    const broken = syntaxFindings(document, strayWords(document));
    const unresolved = unresolvedNames(document, services);
    const mistyped = mistypedDeclarations(unresolved, document, services);
    const all = [
        ...broken,
        ...unknownNames(unresolved, mistyped, lostNames(document, broken), services),
        ...useFindings(document, services),
        ...shopsFindings(document, services),
        ...(broken.length === 0 ? unusedNames(document, adjustingBlocks(document), mistyped) : []), // a broken line may be the one that uses it
        ...nodeFindings(document, broken, services),
    ];
    const findings = withoutConsequences(all, broken, document);
    findings.sort((a, b) => a.where.offset - b.where.offset);
    computed.set(document.references, findings);
    return findings;
}

function* nodeFindings(document: LangiumDocument, broken: readonly Finding[], services: KerfServices): Iterable<Finding> {
    const [nearest] = shopsInSight(document, services);
    const shop = nearest && shopOf(nearest.shop);
    const isBroken = brokenIn(broken);
    const adjusting = adjustingBlocks(document);
    for (const node of treeOf(document.parseResult.value).nodes) {
        if (isAmount(node)) continue; // every other node is one, and what is to be said of it the number around it says
        yield* numberFindings(node);
        yield* valueFindings(node);
        yield* duplicateNames(node);
        yield* duplicateProperties(node, isBroken);
        yield* kindCycles(node);
        yield* allowFindings(node, services.outside.ruleIds);
        yield* shopFindings(node);
        yield* priceFindings(node, shop);
        if (isRecipe(node) && !isBroken(node)) yield* variantFindings(node);
        if (!adjusting.has(node) && !isBroken(node)) yield* missingProperties(node);
    }
}

/** Whether something is broken in a node or right behind it. */
function brokenIn(findings: readonly Finding[]): (node: AstNode) => boolean {
    if (findings.length === 0) return () => false;
    const offsets = findings.map(({ where }) => where.offset).sort((a, b) => a - b);
    return ({ $cstNode }) => {
        const { offset = 0, end = 0 } = $cstNode ?? {};
        let [low, high] = [0, offsets.length];
        while (low < high) {
            const middle = (low + high) >> 1;
            if (offsets[middle]! < offset) low = middle + 1;
            else high = middle;
        }
        return low < offsets.length && offsets[low]! <= end;
    };
}
