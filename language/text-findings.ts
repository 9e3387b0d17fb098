import type { AstNode, LangiumDocument } from 'langium';
import { KeptOn } from '../shared/plan/kept';
import { partitionPoint } from '../shared/quantity/partition-point';
import type { Finding } from '../shared/recipe/finding';
import { strayTexts } from './findings/about-texts';
import { withoutConsequences } from './findings/consequences';
import { editionFindings, newerEdition } from './findings/edition';
import { issueFindings } from './findings/issues';
import { lostNames } from './findings/lost-names';
import { mistypedDeclarations } from './findings/mistyped';
import { nodeFindings } from './findings/of-nodes';
import { runFindings } from './findings/runs';
import { shopsFindings } from './findings/shop';
import { withStepsTold } from './findings/step-or-word';
import { strayWords } from './findings/stray-words';
import { syntaxFindings } from './findings/syntax';
import { unknownNames } from './findings/unknown-name';
import { unresolvedNames } from './findings/unresolved';
import { unusedNames } from './findings/unused-names';
import { useFindings } from './findings/use';
import type { RunsRead } from './lowering/measured-runs';
import { shopOf, shopsInSight } from './lowering/shop';
import { treeOf } from './names/tree';
import type { KerfLexingReport } from './parsing/lexer';
import type { KerfServices } from './services';
import { adjustingBlocks } from './variants/adjusting-blocks';

/** What the text says, and what it says together with the runs as they were read. */
interface Computed {
    readonly own: readonly Finding[];
    readonly read: RunsRead;
    readonly all: readonly Finding[];
}

const computed = new KeptOn<object, Computed>();

/**
 * All that can be said of the text by itself, in the order of the text: broken lines, names that lead
 * nowhere, numbers that do not fit. Needs a linked document; never throws. Computed once a linking, and what runs of other
 * files say of it whenever one of them has changed.
 */
export function textFindings(document: LangiumDocument, services: KerfServices): readonly Finding[] {
    // Relinking replaces the list of references, so it stands for this state of the document.
    const known = computed.get(document.references);
    const read = services.names.MeasuredRuns.all();
    if (known?.read === read) return known.all;
    const newer = newerEdition(document);
    if (newer !== undefined) return [newer];
    const own = known?.own ?? ownFindings(document, services);
    const all = [...own, ...issueFindings(document, services)].sort((a, b) => a.where.offset - b.where.offset);
    computed.set(document.references, { own, read, all });
    return all;
}

function ownFindings(document: LangiumDocument, services: KerfServices): readonly Finding[] {
    const broken = syntaxFindings(document, strayWords(document));
    const unresolved = unresolvedNames(document, services);
    const mistyped = mistypedDeclarations(unresolved, document, services);
    const all = [
        ...broken,
        ...unknownNames(unresolved, mistyped, lostNames(document, broken), services),
        ...editionFindings(document),
        ...useFindings(document, services),
        ...shopsFindings(document, services),
        ...strayTexts(document, services),
        ...runFindings(document, services),
        ...(broken.length === 0 ? unusedNames(document, adjustingBlocks(document), mistyped) : []), // a broken line may be the one that uses it
        ...findingsByNode(document, broken, services),
    ];
    const { conflicts = [] } = (document.parseResult.lexerReport as Partial<KerfLexingReport> | undefined) ?? {};
    const kept = withoutConsequences(all, broken, document).filter(
        ({ where }) =>
            broken.some((each) => each.where === where) ||
            !conflicts.some(({ offset, end }) => offset <= where.offset && where.offset < end),
    );
    return withStepsTold(kept, document, services);
}

function findingsByNode(document: LangiumDocument, broken: readonly Finding[], services: KerfServices): Iterable<Finding> {
    const [nearest] = shopsInSight(document, services);
    return nodeFindings(treeOf(document.parseResult.value).nodes, {
        isBroken: brokenIn(broken),
        adjusting: adjustingBlocks(document),
        shop: nearest && shopOf(nearest.shop),
        ruleIds: services.outside.ruleIds,
    });
}

/** Whether something is broken in a node or right behind it. */
function brokenIn(findings: readonly Finding[]): (node: AstNode) => boolean {
    if (findings.length === 0) return () => false;
    const offsets = findings.map(({ where }) => where.offset).sort((a, b) => a - b);
    return ({ $cstNode }) => {
        const { offset = 0, end = 0 } = $cstNode ?? {};
        const next = partitionPoint(offsets.length, (index) => offsets[index]! < offset);
        return next < offsets.length && offsets[next]! <= end;
    };
}
