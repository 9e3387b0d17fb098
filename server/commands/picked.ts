import { type Message, phrase } from '../../shared/recipe/phrase';
import type { NewRecipeChoices, NewRecipeParams, Picked } from '../../shared/view/new-recipe';
import { pick, pickFill } from '../starting/picked';
import { NotDone } from './not-done';

/** The one of that name, or the only one of the shop's own. */
export function pickedOf(what: Message, name: string | undefined, all: readonly Picked[]): Picked {
    const choice = pick(name, all);
    if ('chosen' in choice) return choice.chosen;
    const { names } = choice;
    throw new NotDone(
        name === undefined ? phrase`Say which ${what}: ${names}.` : phrase`There is no ${what} ${name}; there is ${names}.`,
    );
}

/** A resin of the shop by its name, or a colour. */
export function fillOf(name: string, choices: NewRecipeChoices): Pick<NewRecipeParams, 'resin' | 'colour'> {
    const choice = pickFill(name, choices);
    if ('chosen' in choice) return choice.chosen;
    throw new NotDone(phrase`There is no resin and no colour ${name}; there is ${choice.names}, or a colour such as #1d5f7a.`);
}

/** The one that was meant: named, or the only one there is. */
export function namedOf(what: Message, name: string | undefined, all: readonly string[]): string {
    if (name !== undefined) return name;
    if (all.length === 1) return all[0]!;
    throw new NotDone(
        all.length === 0 ? phrase`There is no ${what} in this file.` : phrase`Say which ${what}: ${[...all].join(', ')}.`,
    );
}
