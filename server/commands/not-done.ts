import type { Message } from '../../shared/recipe/phrase';

/** Why a command has done nothing, in words for whoever gave it. */
export class NotDone extends Error {
    constructor(override readonly message: Message) {
        super(message);
    }
}
