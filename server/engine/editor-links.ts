import type { Links } from '../../shared/review/html/links';
import { command } from '../../shared/view/protocol';

/** Links of a page that an editor shows: each is a command of it. */
export const editorLinks: Links = {
    place: (where) => link(command.goToPlace, where),
    rule: (id) => link(command.explain, id),
};

function link(name: string, argument: unknown): string {
    return `command:${name}?${encodeURIComponent(JSON.stringify([argument]))}`;
}
