import type { AstNode } from 'langium';
import type { Finding, Severity } from '../../shared/recipe/finding';
import { type Message, phrase } from '../../shared/recipe/phrase';
import { isBurn, isBurnt, isCutTest, isFigure, isRecipe, isRoutine, isShop, isStep } from '../generated/ast';
import { whereOfFirstWord, whereOfPart } from '../lowering/places';
import { saysNothing } from '../lowering/runs';
import { mergedItems } from '../variants/merge';
import { itemKey } from '../vocabulary/item-key';
import type { KeyOf } from '../vocabulary/lookup';
import type { NodeType } from '../vocabulary/property';
import { say } from './say';

/** What a block cannot do without: any one of `either`. */
interface Need<Key extends string = string> {
    readonly either: readonly Key[];
    readonly severity: Severity;
    readonly message: (name: string) => Message;
}

function need<Key extends KeyOf>(severity: Severity, either: readonly Key[], message: (name: string) => Message): Need<Key> {
    return { either, severity, message };
}

const sheet = [
    need('error', ['thickness'], (name) => phrase`${name} has no thickness: nothing can be worked out from it.`),
    need('warning', ['wood', 'madeof'], (name) => phrase`${name} does not say which wood it is, or what it is made of.`),
];
const marks = ['art', 'circle', 'rectangle'] as const;

const needs: { readonly [Block in NodeType]?: readonly Need<KeyOf<Block>>[] } = {
    Board: sheet,
    Veneer: sheet,
    Lot: [need('warning', ['thickness', 'moisture', 'bought'], (name) => phrase`${name} says nothing of what was bought.`)],
    Laser: [
        need('warning', ['beam'], (name) => phrase`${name} does not say what kind of beam it has.`),
        need('warning', ['power'], (name) => phrase`${name} does not say its power.`),
    ],
    Coupon: [
        need(
            'warning',
            ['burn', 'cut'],
            () => phrase`This coupon has no burnt square: a line such as \`burn 40 % at 400 mm/s gives 0.09 mm\`.`,
        ),
    ],
    Shop: [
        need('warning', ['currency'], (name) => phrase`${name} does not say in which currency it counts.`),
        need(
            'info',
            ['hourly'],
            (name) => phrase`${name} does not say what an hour of work costs: the cost is of material alone.`,
        ),
    ],
    Run: [
        need(
            'hint',
            ['issue'],
            () => phrase`This run does not say which issue it followed: it is taken for one of the recipe as it is.`,
        ),
    ],
    Beam: [need('warning', ['wavelength'], (name) => phrase`${name} does not say its wavelength.`)],
    Blank: [
        need('error', ['of'], (name) => phrase`${name} does not say which board or veneer it is cut from.`),
        need('error', ['size'], (name) => phrase`${name} has no size.`),
    ],
    Engrave: [
        need('warning', marks, (name) => phrase`${name} burns nothing: it has no art, circle or rectangle.`),
        need('warning', ['depth', 'tone', 'power'], (name) => phrase`${name} says neither how deep nor how dark it is to be.`),
    ],
    Cut: [need('warning', marks, (name) => phrase`${name} cuts nothing: it has no art, circle or rectangle.`)],
    Sand: [need('warning', ['flush', 'take', 'grits'], () => phrase`This step does not say what is sanded off.`)],
    Check: [need('warning', ['depth', 'width', 'tone', 'through'], () => phrase`This step does not say what is measured.`)],
};

/** A line of a run that says nothing of the step it names. */
export function* emptyLines(node: AstNode): Iterable<Finding> {
    if (!isBurnt(node) || node.step?.ref === undefined || !saysNothing(node)) return;
    if ((node.speed ?? node.passes ?? node.pitch) !== undefined) return; // what it lacks is said by itself
    if (node.sheet !== undefined && node.sheet.ref === undefined) return; // the rest of the line may be lost behind its name
    const name = node.step.ref.name;
    const message = phrase`This line says neither what \`${name}\` was burnt with nor what was measured, as in \`${name} depth 0.50 mm\`.`;
    yield say('missing-property', { severity: 'warning', message, where: whereOfFirstWord(node) });
}

/** A square, a tried cut or a line of a run with settings that are not whole: half of them say nothing. */
export function* unsaidClauses(node: AstNode): Iterable<Finding> {
    const lack = (message: Message) => say('missing-property', { severity: 'error', message, where: whereOfFirstWord(node) });
    if (isBurn(node)) {
        if (node.speed === undefined) yield lack(phrase`This square does not say how fast it was burnt, as in \`at 400 mm/s\`.`);
        else if (node.depth === undefined && node.tone === undefined)
            yield lack(phrase`This square does not say how it came out, as in \`gives 0.09 mm\` or \`gives tone 60 %\`.`);
    } else if (isCutTest(node)) {
        if (node.speed === undefined) yield lack(phrase`This cut does not say how fast it was tried, as in \`at 8 mm/s\`.`);
        else if (node.through === undefined && node.gives === undefined)
            yield lack(phrase`This cut does not say what came of it, as in \`gives through\` or \`gives skin\`.`);
    } else if (isBurnt(node)) {
        const { power, speed, passes, pitch } = node;
        if (power !== undefined && speed === undefined)
            yield lack(phrase`This line does not say how fast it was burnt, as in \`at 250 mm/s\`.`);
        else if (power === undefined && (speed ?? passes ?? pitch) !== undefined)
            yield lack(phrase`This line does not say with what power it was burnt, as in \`80 % at 250 mm/s\`.`);
    }
}

/** Blocks that lack what they cannot do without. Not asked of a block with a broken line: it may stand there. */
export function* missingProperties(node: AstNode): Iterable<Finding> {
    const wanted =
        isRecipe(node) && burns(node.items) ? recipeNeeds : (needs[node.$type as NodeType] as readonly Need[] | undefined);
    const items = (node as { items?: readonly AstNode[] }).items;
    if (wanted === undefined || items === undefined) return;
    if (isShop(node) && node.items.length > 0 && node.items.every(isOfClimate)) return; // nothing in it is reckoned with
    if (isRoutine(node.$container) && !isStep(node)) return; // its piece is a blank of whoever follows it
    const lines = isRecipe(node) ? mergedItems(node) : items;
    for (const { either, severity, message } of wanted) {
        if (lines.some((line) => either.includes(itemKey(line) ?? ''))) continue;
        const name = (node as { name?: string }).name;
        const where = name === undefined ? whereOfFirstWord(node) : whereOfPart(node, 'name');
        yield say('missing-property', { severity, message: message(name === undefined ? phrase`This` : `\`${name}\``), where });
    }
}

function isOfClimate(line: AstNode): boolean {
    return isFigure(line) && (line.key === 'temperature' || line.key === 'humidity');
}

const recipeNeeds = [need('warning', ['laser'], (name) => phrase`${name} does not say which laser it is burnt on.`)];

function burns(items: readonly AstNode[]): boolean {
    return items.some(({ $type }) => $type === 'Engrave' || $type === 'Cut');
}
