import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { type Message, phrase } from '../../shared/recipe/phrase';
import * as ast from '../generated/ast';
import { whereOfFirstWord, whereOfPart } from '../lowering/places';
import { saysNo } from '../vocabulary/no';
import { say } from './say';

/** What only a variant may leave away, since its base says it. */
export function* wholeInItself(item: ast.RecipeItem | ast.RoutineItem): Iterable<Finding> {
    const lacks = lack(item);
    const where = 'name' in item && item.name !== undefined ? whereOfPart(item, 'name') : whereOfFirstWord(item);
    if (lacks !== undefined) yield say('missing-property', { message: lacks, where });
    if (ast.isStep(item) && 'nth' in item && item.nth !== undefined) {
        const message = phrase`\`${item.nth}\` tells apart steps of a base; this step is not one of a base.`;
        yield say('no-base', { message, where: whereOfPart(item, 'nth') });
    }
    for (const line of 'items' in item ? (item.items as readonly AstNode[]) : []) {
        if (!ast.isWithout(line) || saysNo(line)) continue;
        const message = ast.isStep(item)
            ? phrase`There is nothing to leave out here: the step is not one of a base.`
            : phrase`There is nothing to leave out here: \`${'name' in item ? item.name : ''}\` is not of a base.`;
        yield say('no-base', { message, where: whereOfFirstWord(line) });
    }
}

function lack(item: ast.RecipeItem | ast.RoutineItem): Message | undefined {
    switch (item.$type) {
        case 'Art':
            if (item.path !== undefined && item.path.trim() !== '') return undefined;
            return phrase`\`${item.name}\` does not say which file it is: a path in quotes.`;
        case 'Places':
        case 'Engrave':
        case 'Cut':
            return item.blank === undefined
                ? phrase`\`${item.name}\` does not say on which blank: \`on\` and its name.`
                : undefined;
        case 'Follow':
            return item.blank === undefined ? phrase`This does not say on which blank: \`on\` and its name.` : undefined;
        case 'Seal':
            return item.sealer === undefined
                ? phrase`This does not say with what: \`with\` and the name of a sealer.`
                : undefined;
        case 'Fill':
            return item.resin === undefined ? phrase`This does not say with what: \`with\` and the name of a resin.` : undefined;
        case 'Finish':
            return item.coat === undefined ? phrase`This does not say with what: \`with\` and the name of a finish.` : undefined;
        case 'Inlay':
            return item.pocket === undefined
                ? phrase`This does not say into what: \`into\` and the name of a pocket.`
                : undefined;
        default:
            return undefined;
    }
}
