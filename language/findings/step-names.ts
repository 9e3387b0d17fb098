import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { type Cut, type Engrave, isCut, isEngrave, isRecipe, isWas, type Was } from '../generated/ast';
import { whereOf, whereOfPart } from '../lowering/places';
import { isCalled } from '../names/called-steps';
import { membersOf } from '../variants/members';
import { removal, replaceWith, say } from './say';

/** Two steps of a recipe that go by one name behind `called`, and a former name that leads to another step. */
export function* stepNamesTaken(node: AstNode): Iterable<Finding> {
    if (!isRecipe(node)) return;
    const members = membersOf(node);
    const first = new Map<string, AstNode>();
    for (const member of members) {
        if (!isCalled(member)) continue;
        const kind = member.$type.toLowerCase();
        const earlier = first.get(`${kind} ${member.called}`);
        if (earlier === undefined) {
            first.set(`${kind} ${member.called}`, member);
            continue;
        }
        const where = whereOfPart(member, 'called');
        yield say('duplicate-name', {
            message: phrase`There is already a \`${kind}\` step called \`${member.called}\`: nobody can say which of the two is meant. Call this one something else.`,
            where,
            related: [{ message: phrase`The first one.`, where: whereOfPart(earlier, 'called') }],
            fixes: [replaceWith(where, `${member.called}-2`, phrase`Call it \`${member.called}-2\``)],
        });
    }
    const steps = members.filter((member) => isEngrave(member) || isCut(member));
    const names = new Map(steps.map((step) => [step.name, step]));
    const before = new Map<string, AstNode>();
    for (const step of steps) {
        for (const was of (step.items as readonly AstNode[]).filter(isWas)) yield* formerNamesTaken(step, was, names, before);
    }
}

function* formerNamesTaken(
    step: Engrave | Cut,
    was: Was,
    names: ReadonlyMap<string, AstNode>,
    before: Map<string, AstNode>,
): Iterable<Finding> {
    for (const [index, name] of was.names.entries()) {
        const other = names.get(name) ?? before.get(name);
        if (other === undefined) {
            before.set(name, step);
            continue;
        }
        const itself =
            other !== step
                ? phrase`The runs of \`${name}\` belong to another step`
                : names.get(name) === step
                  ? phrase`This step is called \`${name}\` already`
                  : phrase`\`${name}\` stands twice`;
        yield say('duplicate-name', {
            severity: 'warning',
            message: phrase`${itself}: here \`was ${name}\` says nothing. Leave it out.`,
            where: whereOfPart(was, 'names', index),
            related: other === step ? [] : [{ message: phrase`This one.`, where: whereOfPart(other, 'name') }],
            fixes: was.names.length > 1 ? [] : [removal(whereOf(was), phrase`Remove this line`)],
        });
    }
}
