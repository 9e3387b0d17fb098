import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import * as ast from '../generated/ast';
import { whereOf, whereOfFirstWord } from '../lowering/places';
import type { BaseLines } from '../variants/base-lines';
import { mergedItems } from '../variants/merge';
import { knownAs, spoken } from '../variants/same-step';
import { say } from './say';

/** Something left out on which a step still builds that was kept. */
export function* neededButLeftOut(recipe: ast.Recipe, base: BaseLines): Iterable<Finding> {
    const gone = new Map<AstNode, ast.Without>();
    for (const item of recipe.items) {
        const target = ast.isWithout(item) ? base.leftOut(item) : undefined;
        if (ast.isWithout(item) && target !== undefined) gone.set(target, item);
    }
    if (gone.size === 0) return;
    const names = new Map(
        [...gone].flatMap(([node, without]) => (isNamed(node) ? [[keyOf(node), { node, without }] as const] : [])),
    );
    const said = new Set<ast.Without>();
    for (const step of mergedItems(recipe).filter(ast.isStep)) {
        for (const key of needs(step)) {
            const lost = names.get(key);
            if (lost === undefined || said.has(lost.without)) continue;
            said.add(lost.without);
            const head = spoken(knownAs(step));
            yield say('left-out-needed', {
                message: phrase`\`${lost.node.name}\` is left out, but \`${head}\` builds on it.`,
                where: whereOf(lost.without),
                related: [{ message: phrase`\`${head}\` stands here.`, where: whereOfFirstWord(step) }],
                fixes: [
                    {
                        title: phrase`Leave out \`${head}\` too`,
                        changes: [{ do: 'add', block: whereOf(recipe), statement: `without ${head}` }],
                    },
                ],
            });
        }
    }
}

type Named = ast.Art | ast.Blank | ast.Places | ast.Engrave | ast.Cut;

function isNamed(node: AstNode): node is Named {
    return ast.isArt(node) || ast.isBlank(node) || ast.isPlaces(node) || ast.isEngrave(node) || ast.isCut(node);
}

function keyOf(node: Named): string {
    return `${ast.isEngrave(node) || ast.isCut(node) ? 'step' : node.$type} ${node.name}`;
}

/** The names a step builds on, each with its kind. */
function needs(step: ast.Step): string[] {
    const blank = 'blank' in step ? [`Blank ${step.blank?.$refText}`] : [];
    switch (step.$type) {
        case 'Engrave':
        case 'Cut': {
            const burnt = (step.items as readonly AstNode[]).filter((item) => ast.isArtUse(item) || ast.isShape(item));
            const arts = burnt.flatMap((item) => (ast.isArtUse(item) ? `Art ${item.art?.$refText}` : []));
            const places = burnt.flatMap((item) => (item.places === undefined ? [] : `Places ${item.places.$refText}`));
            return [...blank, ...arts, ...places];
        }
        case 'Fill':
            return [`step ${step.pocket?.$refText}`];
        case 'Inlay':
            return [`step ${step.relief?.$refText}`, `step ${step.pocket?.$refText}`];
        case 'Check':
            return [`step ${step.step?.$refText}`];
        default:
            return blank;
    }
}
