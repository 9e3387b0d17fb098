import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { nearest } from '../../shared/recipe/nearest';
import { phrase } from '../../shared/recipe/phrase';
import * as ast from '../generated/ast';
import { whereOf, whereOfFirstWord, whereOfPart } from '../lowering/places';
import { findsWhatItLeavesOut } from '../variants/adjusted';
import type { BaseLines } from '../variants/base-lines';
import { basesOf, longestLine } from '../variants/lineage';
import { linesOfBase } from '../variants/merge';
import { type Known, knownAs, pointedAt, spoken } from '../variants/same-step';
import { saysNo } from '../vocabulary/no';
import { neededButLeftOut } from './left-out-needed';
import { removal, replaceWith, say } from './say';
import { wholeInItself } from './whole-in-itself';

/** What can be wrong between a variant and its base, and in a recipe without one that is written like a variant. */
export function* variantFindings(recipe: ast.Recipe): Iterable<Finding> {
    yield* lineFindings(recipe);
    const base = linesOfBase(recipe);
    for (const item of recipe.items) {
        if (ast.isWithout(item) || ast.isInserted(item)) {
            if (recipe.base === undefined) yield withoutBase(item);
            else if (base !== undefined) yield* pointFindings(item, base, recipe);
            for (const step of ast.isInserted(item) ? item.items : []) yield* wholeInItself(step);
        } else {
            const said = base?.saidBy(item) ?? [];
            const isAdjusting = said.length > 0;
            if (said.length === 1) yield* leftOutOfNothing(item, said[0]!, recipe);
            if (!isAdjusting && recipe.base === undefined) yield* wholeInItself(item);
            else if (base !== undefined && ast.isStep(item)) yield* stepFindings(item, said, base, recipe);
            else if (base !== undefined && !isAdjusting) yield* wholeInItself(item);
        }
    }
    if (base !== undefined) yield* neededButLeftOut(recipe, base);
}

/** A line of bases that leads back, or goes on and on. */
function* lineFindings(recipe: ast.Recipe): Iterable<Finding> {
    if (recipe.base?.ref === undefined) return;
    const bases = basesOf(recipe);
    const last = bases.at(-1) ?? recipe;
    const next = last.base?.ref;
    if (next === undefined) return;
    const where = whereOfPart(recipe, 'base');
    const message =
        bases.length >= longestLine
            ? phrase`\`${recipe.name}\` stands on more than ${longestLine} recipes: further down nothing is read.`
            : phrase`\`${recipe.base.$refText}\` leads back to where it began: one of these recipes has to stand by itself.`;
    yield say('based-cycle', { message, where });
}

function withoutBase(item: ast.Without | ast.Inserted): Finding {
    const word = ast.isWithout(item) ? 'without' : item.place;
    return say('no-base', {
        message: phrase`\`${word}\` stands only in a recipe that is based on another, such as \`recipe large-tray based on heron-tray { … }\`.`,
        where: whereOfFirstWord(item),
    });
}

/** `without` and `after` point at what the base has. */
function* pointFindings(item: ast.Without | ast.Inserted, base: BaseLines, recipe: ast.Recipe): Iterable<Finding> {
    const { step } = item;
    if (step !== undefined) {
        const found = base.at(step);
        if (found.length === 0 && isNamed(step)) yield notInBase(step, pointedAt(step), base, recipe);
        else if (found.length > 1) yield which(step, pointedAt(step), found, recipe);
        else if (found.length === 1 && step.nth !== undefined) yield byNumber(step, found[0]!, recipe);
    } else if (ast.isWithout(item) && isNamed(item) && base.leftOut(item) === undefined) {
        const named = item.art ?? item.blank ?? item.places;
        const what = item.key ?? (item.rule === undefined ? named?.$refText : `allow ${item.rule}`);
        if (what === undefined) return;
        yield say('not-in-base', { message: phrase`\`${recipe.base?.$refText}\` has no \`${what}\`.`, where: whereOf(item) });
    }
}

function* stepFindings(step: ast.Step, said: readonly AstNode[], base: BaseLines, recipe: ast.Recipe): Iterable<Finding> {
    if (said.length === 1 && 'nth' in step && step.nth !== undefined) yield byNumber(step, said[0]!, recipe);
    if (said.length === 1) yield* replacedArt(step, said[0]!, recipe);
    if (said.length > 1) yield which(step, knownAs(step), said.filter(ast.isStep), recipe);
    if (said.length > 0 || !isNamed(step)) return;
    // Where the base has no steps at all there is nothing to stand before or after.
    if (base.items.some(ast.isStep)) yield notInBase(step, knownAs(step), base, recipe);
    else yield* wholeInItself(step);
}

function notInBase(node: ast.Step | ast.StepAt, known: Known, base: BaseLines, recipe: ast.Recipe): Finding {
    const others = base.items.filter(ast.isStep).map((step) => spoken(knownAs(step)));
    const meant = known.nth === undefined ? nearest(spoken(known), others) : undefined;
    const hint = meant === undefined ? '' : phrase` Did you mean \`${meant}\`?`;
    const fresh = ast.isStepAt(node) ? '' : phrase` A new step stands in \`after … { }\` or \`before … { }\`.`;
    const what = known.nth === undefined ? spoken(known) : `${spoken(known)} ${known.nth}`;
    const where = ast.isStepAt(node) ? whereOf(node) : whereOfFirstWord(node);
    const fixes = meant === undefined ? [] : [replaceWith(headOf(node, where), meant, phrase`Change to \`${meant}\``, true)];
    return say('not-in-base', { message: phrase`\`${recipe.base?.$refText}\` has no \`${what}\`.${hint}${fresh}`, where, fixes });
}

/** From the first word to the name or the text by which the step is known. */
function headOf(node: ast.Step | ast.StepAt, first: Finding['where']): Finding['where'] {
    if (ast.isStepAt(node)) return first;
    const part = ['name', 'pocket', 'relief', 'routine', 'blank', 'step', 'text'].find((key) => key in node) ?? 'name';
    const end = whereOfPart(node, ast.isInlay(node) ? 'relief' : part);
    return { ...first, length: end.offset + end.length - first.offset };
}

/** Several steps of the base read alike: a name tells one apart, or for those without one a number. */
function which(node: ast.Step | ast.StepAt, known: Known, alike: readonly ast.Step[], recipe: ast.Recipe): Finding {
    const where = ast.isStepAt(node) ? whereOf(node) : headOf(node, whereOfFirstWord(node));
    const behind = { ...where, offset: where.offset + where.length, length: 0 };
    const signs = alike.map((step, index) => {
        const { called } = knownAs(step);
        return called === undefined ? `#${index + 1}` : `called ${called}`;
    });
    const [first = '', second = ''] = signs;
    return say('which-step', {
        message: phrase`\`${recipe.base?.$refText}\` has ${alike.length} steps \`${spoken(known)}\`: \`${first}\` behind it means the first, \`${second}\` the second.`,
        where,
        fixes: signs.slice(0, 4).map((sign, index) => ({
            title: phrase`Mean the ${['first', 'second', 'third', 'fourth'][index]}`,
            changes: [{ do: 'replace' as const, where: behind, text: ` ${sign}` }],
        })),
    });
}

/** A number means another step as soon as the base gains one before it; a name goes with its step. */
function byNumber(node: ast.Step | ast.StepAt, target: AstNode, recipe: ast.Recipe): Finding {
    const where = whereOfPart(node, 'nth');
    const { called } = target as { called?: string };
    const name = called === undefined ? phrase`a name` : phrase`\`called ${called}\``;
    return say('by-number', {
        severity: 'hint',
        message:
            called === undefined
                ? phrase`\`${where.length === 0 ? '#' : (node as { nth?: string }).nth}\` means another step once \`${recipe.base?.$refText}\` gains one before it: write \`called\` and a name behind that step, and here.`
                : phrase`That step has ${name}: it stays the same one when \`${recipe.base?.$refText}\` gains a step before it.`,
        where,
        related: [{ message: phrase`The step that is meant.`, where: whereOfFirstWord(target) }],
        fixes: called === undefined ? [] : [replaceWith(where, `called ${called}`, phrase`Write \`called ${called}\``, true)],
    });
}

/** Lines that leave out what the block of the base does not say, where that is not also a way to say no. */
function* leftOutOfNothing(own: ast.RecipeItem, base: AstNode, recipe: ast.Recipe): Iterable<Finding> {
    for (const line of 'items' in own ? (own.items as readonly AstNode[]) : []) {
        if (!ast.isWithout(line) || saysNo(line) || (line.key ?? line.rule) === undefined) continue;
        if (findsWhatItLeavesOut(line, base)) continue;
        const what = line.$cstNode?.text.replace(/^without\s+/, '').replaceAll(/\s+/g, ' ');
        const block = ast.isStep(own) ? spoken(knownAs(own)) : `${own.$type.toLowerCase()} ${(own as { name?: string }).name}`;
        yield say('not-in-base', {
            message: phrase`\`${recipe.base?.$refText}\` says no \`${what}\` in \`${block}\`: there is nothing to leave out.`,
            where: whereOf(line),
            fixes: [removal(whereOf(line), phrase`Remove this line`)],
        });
    }
}

/** What a step of a variant burns takes the place of all that the base's step burns; said where that was more. */
function* replacedArt(step: ast.Step, base: AstNode, recipe: ast.Recipe): Iterable<Finding> {
    if (!ast.isEngrave(step) && !ast.isCut(step)) return;
    const burns = (items: readonly AstNode[] = []) => items.filter((item) => ast.isArtUse(item) || ast.isShape(item));
    const [own, theirs] = [burns(step.items), burns((base as { items?: readonly AstNode[] }).items)];
    if (own.length === 0 || theirs.length <= own.length) return;
    if ((step.items as readonly AstNode[]).some((item) => ast.isWithout(item) && item.key === 'art')) return;
    const lines = theirs.map((line) => (line.$cstNode?.text ?? '').replaceAll(/\s+/g, ' '));
    const block = whereOf(step);
    yield say('replaces-art', {
        severity: 'warning',
        message: phrase`This takes the place of all that \`${recipe.base?.$refText}\` burns in \`${step.name}\`: ${lines.map((line) => `\`${line}\``).join(', ')}.`,
        where: whereOfFirstWord(own[0]!),
        related: theirs.map((line) => ({ message: phrase`It is not burnt any more.`, where: whereOf(line) })),
        fixes: [
            {
                title: phrase`Burn those of \`${recipe.base?.$refText}\`, too`,
                changes: lines.map((statement) => ({ do: 'add' as const, block, statement })),
            },
            { title: phrase`Say that they are left out`, changes: [{ do: 'add', block, statement: 'without art' }] },
        ],
    });
}

/** A reference that leads nowhere has been reported already, and one that is being typed has no name yet. */
function isNamed(node: ast.Step | ast.StepAt | ast.Without): boolean {
    const references = ['carved', 'pocket', 'blank', 'relief', 'step', 'art', 'places', 'routine'].map(
        (key) => (node as unknown as Record<string, { ref?: unknown; $refText?: string } | undefined>)[key],
    );
    return references.every((reference) => reference?.$refText === undefined || reference.ref !== undefined);
}
