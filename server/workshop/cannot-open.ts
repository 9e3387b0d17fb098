import type { Message } from '../../shared/recipe/phrase';
/** A file that cannot be read as a recipe file; the message is for a person. */
export class CannotOpen extends Error {
    declare readonly message: Message;

    constructor(message: Message) {
        super(message);
    }
}
