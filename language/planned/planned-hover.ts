import { AstUtils, type LangiumDocument, type LeafCstNode } from 'langium';
import { isDepth, isFigure, isStep, type Step } from '../generated/ast';
import { isLine } from '../vocabulary/lookup';
import { type PlannedStep, plannedSteps } from './planned-step';

/**
 * On the depth or tone that a step asks for, and on the step's first words: the settings that the last plan solved for it, and what
 * comes of them, as lines of Markdown. Undefined elsewhere, and where the step has been rewritten since. Never waits for a plan.
 */
export function plannedHover(
    leaf: LeafCstNode,
    document: LangiumDocument,
    planned: readonly PlannedStep[],
): readonly string[] | undefined {
    const step = AstUtils.getContainerOfType(leaf.astNode, isStep);
    if (step === undefined || !(isHead(leaf, step) || isWish(leaf))) return undefined;
    for (const [each, { hints }] of plannedSteps(document, planned)) {
        if (each !== step || hints.length === 0) continue;
        const facts = hints[0]!.tooltip.split('\n');
        return [hints.map(({ label }) => label).join(', '), ...facts.filter((fact) => fact !== '')];
    }
    return undefined;
}

function isWish({ astNode }: LeafCstNode): boolean {
    return (
        AstUtils.getContainerOfType(astNode, isDepth) !== undefined ||
        AstUtils.getContainerOfType(astNode, (node) => isFigure(node) && isLine(node, 'tone')) !== undefined
    );
}

/** The step's own words before its block. */
function isHead({ astNode, offset, text }: LeafCstNode, step: Step): boolean {
    return astNode === step && (offset === step.$cstNode?.offset || ('name' in step && step.name === text));
}
