import type { Where } from '../quantity/where';
import type { Change, Finding, Fix } from '../recipe/finding';
import { phrase } from '../recipe/phrase';
import type { Recipe } from '../recipe/recipe';
import type { Followed, Step } from '../recipe/step';
import { allowPage } from './allow-silences-nothing';

/**
 * Findings of a recipe that follows routines. What a routine alone brings about stands in the routine, with the line that follows
 * it beside it, and is mended there. What comes of a step of the recipe and one of a routine together stands at the line that follows:
 * other recipes may do the same steps in good order.
 */
export function inRoutine(findings: readonly Finding[], recipe: Recipe): readonly Finding[] {
    const steps = recipe.steps.filter(({ followed }) => followed !== undefined);
    return steps.length === 0 ? findings : findings.flatMap((finding) => placed(finding, new Routines(recipe, steps)));
}

function placed(finding: Finding, routines: Routines): Finding[] {
    const step = routines.stepAt(finding.where);
    if (step?.followed === undefined) return [{ ...finding, fixes: finding.fixes.flatMap((fix) => routines.fromOutside(fix)) }];
    // One that only some of those who follow need.
    if (finding.rule === allowPage.id) return [];
    const { name, where } = step.followed;
    const withOthers = finding.related.some((each) => each.where.uri !== '' && routines.isOfRecipe(each.where));
    const shared = finding.fixes.flatMap((fix) => routines.within(fix));
    const own = finding.fixes.flatMap((fix) => routines.fromOutside(fix));
    // What only the recipe can mend is its own.
    if (withOthers || (shared.length === 0 && own.length > 0)) {
        const there = { message: phrase`Written in the routine \`${name}\`.`, where: finding.where };
        return [{ ...finding, where, related: [there, ...finding.related], fixes: own }];
    }
    const here = { message: phrase`\`${routines.recipe.name}\` follows it here.`, where };
    return [{ ...finding, related: [here, ...finding.related], fixes: shared, inRoutine: true }];
}

class Routines {
    constructor(
        readonly recipe: Recipe,
        private readonly steps: readonly Step[],
    ) {}

    /** The step of a routine in which a place lies. */
    stepAt(where: Where): Step | undefined {
        return this.steps.find(({ whole }) => liesIn(where, whole));
    }

    /** Whether a place lies in what the recipe or one it is based on writes itself. */
    isOfRecipe(where: Where): boolean {
        return [this.recipe.whole, ...(this.recipe.base?.wholes ?? [])].some((whole) => liesIn(where, whole));
    }

    /** A fix of the recipe: what it would put before the first step of a routine stands before the line that follows; other changes of a routine are none of its. */
    fromOutside(fix: Fix): Fix[] {
        const changes = fix.changes.map((change) => {
            const places = placesOf(change);
            const inside = places.map((place) => this.stepAt(place));
            if (inside.every((step) => step === undefined)) return change;
            const first = inside[0];
            const isBefore = change.do === 'replace' && change.where.length === 0 && change.where.offset === first?.whole.offset;
            if (!isBefore || first?.followed === undefined || !this.isFirst(first)) return undefined;
            return { ...change, where: { ...first.followed.where, length: 0 } };
        });
        return changes.every((change) => change !== undefined) ? [{ ...fix, changes }] : [];
    }

    /** A fix in a routine, for all that follow: it names the piece, and nothing that only this recipe has. */
    within(fix: Fix): Fix[] {
        const changes = fix.changes.map((change): Change | undefined => {
            const steps = placesOf(change).map((place) => this.stepAt(place));
            if (steps.some((step) => step === undefined)) return undefined;
            const { followed } = steps[0]!;
            if (change.do === 'replace') return this.spoken(change.text, followed!, (text) => ({ ...change, text }));
            if (change.do !== 'add') return change;
            return this.spoken(change.statement, followed!, (statement) => ({ ...change, statement }));
        });
        return changes.every((change) => change !== undefined) ? [{ ...fix, changes }] : [];
    }

    /** A text of a fix as the routine would have it; undefined where it names what only this recipe has. */
    private spoken(text: string, { piece, where }: Followed, make: (text: string) => Change): Change | undefined {
        const name = this.steps.flatMap((step) => {
            const isOfLine = step.followed !== undefined && isSame(step.followed.where, where);
            return isOfLine && 'blank' in step ? (step.blank.value ?? []) : [];
        })[0];
        const words = text.split(/(?<![\w-])([\p{L}_][\w-]*)/u);
        const own = new Set([
            ...this.recipe.blanks.map((each) => each.name),
            ...this.recipe.arts.map((each) => each.name),
            ...this.recipe.steps.flatMap((step) => ('name' in step ? step.name : [])),
        ]);
        const said = words.map((word) => (word === name ? piece : word));
        return said.some((word, index) => word === words[index] && own.has(word)) ? undefined : make(said.join(''));
    }

    /** Whether a step is the first that its line brings into the recipe. */
    private isFirst(step: Step): boolean {
        const before = this.recipe.steps[step.index - 1]?.followed;
        return before === undefined || step.followed === undefined || !isSame(before.where, step.followed.where);
    }
}

function placesOf(change: Change): Where[] {
    if (change.do === 'add') return [change.block];
    if (change.do === 'move') return [change.statement, 'after' in change ? change.after : change.before];
    return [change.where];
}

function liesIn({ uri, offset, length }: Where, whole: Where): boolean {
    return uri === whole.uri && offset >= whole.offset && offset + length <= whole.offset + whole.length;
}

function isSame(one: Where, other: Where): boolean {
    return one.uri === other.uri && one.offset === other.offset;
}

/** Findings of several recipes, those of a routine once: the recipes that follow it stand beside the first. */
export function onceInRoutines(findings: readonly Finding[]): readonly Finding[] {
    const first = new Map<string, number>();
    const kept: Finding[] = [];
    for (const finding of findings) {
        const { rule, where, inRoutine: isShared } = finding;
        const key = `${rule} ${where.uri} ${where.offset} ${where.length}`;
        const at = isShared ? first.get(key) : undefined;
        if (at === undefined) {
            if (isShared) first.set(key, kept.length);
            kept.push(finding);
            continue;
        }
        const known = kept[at]!;
        const more = finding.related.filter((each) => !known.related.some((other) => isSame(other.where, each.where)));
        kept[at] = { ...known, related: [...known.related, ...more] };
    }
    return kept;
}
