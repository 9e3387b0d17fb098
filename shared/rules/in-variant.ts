import type { Where } from '../quantity/where';
import type { Change, Finding, Fix } from '../recipe/finding';
import { phrase } from '../recipe/phrase';
import type { Base, Recipe } from '../recipe/recipe';
import type { Ref, Step } from '../recipe/step';
import { allowPage } from './allow-silences-nothing';

/**
 * Findings of a variant, each at a place of the variant itself: what has its cause in the base stands
 * at the line that adjusts the step, or else at the base's name in the head, with the base's own line
 * beside it. A fix never changes the base, of which other variants may be made.
 */
export function inVariant(findings: readonly Finding[], recipe: Recipe): readonly Finding[] {
    const { base } = recipe;
    return base === undefined ? findings : findings.flatMap((finding) => placed(finding, recipe, base));
}

function placed(finding: Finding, recipe: Recipe, base: Base): Finding[] {
    const fixes = finding.fixes.flatMap((fix) => mended(fix, recipe, base));
    if (!isOfBase(finding.where, base)) return [{ ...finding, fixes }];
    // An exception that only the base needs is the base's own business.
    if (finding.rule === allowPage.id) return [];
    const step = finding.step === undefined ? undefined : recipe.steps[finding.step];
    const where = step === undefined || isOfBase(step.where, base) ? base.where : step.where;
    const there = { message: phrase`Written in \`${base.name}\`, which this is based on.`, where: finding.where };
    return [{ ...finding, where, related: [there, ...finding.related], fixes }];
}

function isOfBase(where: Where, { wholes }: Base): boolean {
    return wholes.some(
        ({ uri, offset, length }) =>
            where.uri === uri && where.offset >= offset && where.offset + where.length <= offset + length,
    );
}

/** A fix that adds a line to a block of the base is made in the variant; one that changes the base's text is left to the base. */
function mended(fix: Fix, recipe: Recipe, base: Base): Fix[] {
    const changes = fix.changes.map((change) => inOwnText(change, recipe, base));
    return changes.every((change) => change !== undefined) ? [{ ...fix, changes }] : [];
}

function inOwnText(change: Change, recipe: Recipe, base: Base): Change | undefined {
    const places =
        change.do === 'add'
            ? [change.block]
            : change.do === 'move'
              ? [change.statement, 'after' in change ? change.after : change.before]
              : [change.where];
    if (!places.some((place) => isOfBase(place, base))) return change;
    if (change.do !== 'add') return undefined;
    const head = headOf(change.block, recipe);
    return head === undefined
        ? undefined
        : { do: 'add', block: recipe.whole, statement: `${head} { ${change.statement.replaceAll('\n', '  ')} }` };
}

/** The first words of a block of the base, as a variant writes them to adjust it. */
function headOf(block: Where, { steps, blanks }: Recipe): string | undefined {
    const same = ({ whole }: { readonly whole: Where }) => whole.uri === block.uri && whole.offset === block.offset;
    const blank = blanks.find(same);
    if (blank !== undefined) return `blank ${blank.name}`;
    const step = steps.find(same);
    const alike = steps.filter((other) => step !== undefined && stepHead(other) === stepHead(step));
    return step && alike.length === 1 ? stepHead(step) : undefined;
}

function stepHead(step: Step): string | undefined {
    switch (step.kind) {
        case 'engrave':
        case 'cut':
            return `${step.kind} ${step.name}`;
        case 'fill':
            return named('fill', step.pocket);
        case 'inlay':
            return named('inlay', step.relief);
        case 'check':
            return named('check', step.step);
        case 'wait':
        case 'do':
            return undefined;
        default:
            return named(step.kind, step.blank);
    }
}

function named(word: string, { value }: Ref): string | undefined {
    return value === undefined ? undefined : `${word} ${value}`;
}
