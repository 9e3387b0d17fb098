import { type AstNode, AstUtils, GrammarUtils } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import * as ast from '../generated/ast';
import { whereOf, whereOfCst, whereOfPart } from '../lowering/places';
import { pointOf } from '../lowering/quantity';
import { linesOfBase } from '../variants/merge';
import { removal, replaceWith, say } from './say';

/** Places that a line names though they lie on another blank, and a grid beside them. */
export function* placesOfLine(node: ast.ArtUse | ast.Shape): Iterable<Finding> {
    const places = node.places?.ref;
    if (places === undefined) return;
    if (node.repeat !== undefined) {
        yield say('places-elsewhere', {
            severity: 'error',
            message: phrase`\`${places.name}\` says already how many copies there are: leave out \`repeat\`.`,
            where: whereOf(node.repeat),
            related: [{ message: phrase`The places are said here.`, where: whereOfPart(places, 'name') }],
            fixes: [removal(whereOf(node.repeat), phrase`Leave out \`repeat\``)],
        });
    }
    const step = node.$container;
    const [own, theirs] = [blankOf(step), blankOf(places)];
    if (own === undefined || theirs === undefined || own === theirs) return;
    const recipe = AstUtils.getContainerOfType(step, ast.isRecipe);
    const fitting = (recipe?.items ?? []).filter(ast.isPlaces).filter((each) => each.blank?.$refText === own);
    const where = whereOfPart(node, 'places');
    yield say('places-elsewhere', {
        severity: 'error',
        message: phrase`\`${places.name}\` are places on \`${theirs}\`, and this is on \`${own}\`.`,
        where,
        related: [{ message: phrase`The places are said here.`, where: whereOfPart(places, 'name') }],
        fixes: fitting.map(({ name }) => replaceWith(where, name, phrase`Change to \`${name}\``, fitting.length === 1)),
    });
}

/** The name of the blank that a step or places are on; a variant need not say it. */
function blankOf(node: ast.Engrave | ast.Cut | ast.Places): string | undefined {
    if (node.blank !== undefined) return node.blank.$refText;
    const recipe = AstUtils.getContainerOfType(node, ast.isRecipe);
    const said = recipe?.base === undefined ? undefined : linesOfBase(recipe)?.saidBy(node)[0];
    return said !== undefined && 'blank' in said ? said.blank?.$refText : undefined;
}

/** One place twice in a list: the two copies would lie on each other and count once. */
export function* placeTwice(node: AstNode): Iterable<Finding> {
    if (!ast.isPlaces(node)) return;
    const points = node.at.map((at) => ({ at, point: pointOf(at) }));
    for (const [index, { at, point }] of points.entries()) {
        const earlier = points.slice(0, index).find(({ point: other }) => {
            if (point === undefined || other === undefined) return false;
            return Math.hypot(point.x.value - other.x.value, point.y.value - other.y.value) < 1e-6;
        });
        if (earlier === undefined) continue;
        const before = GrammarUtils.findNodeForProperty(node.$cstNode, 'at', index - 1);
        const where = whereOf(at);
        const from = before?.end ?? where.offset;
        yield say('places-elsewhere', {
            severity: 'warning',
            message: phrase`This place stands twice in the list: it is burnt once.`,
            where,
            related: [{ message: phrase`It is said here, too.`, where: whereOf(earlier.at) }],
            fixes: [
                removal(
                    { ...whereOfCst(node, before), offset: from, length: where.offset + where.length - from },
                    phrase`Remove it`,
                ),
            ],
        });
    }
}
