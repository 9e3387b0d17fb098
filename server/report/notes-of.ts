import type { LangiumDocument } from 'langium';
import type { ReviewNotes } from '../../shared/review/notes';
import type { Workshop } from '../workshop/workshop';
import { type Naming, type PlacedSilenced, placedSilenced } from './placed-finding';

/** What a reviewer should see of a file besides its findings. */
export interface FileNotes {
    readonly notes: readonly (ReviewNotes & { readonly file: string })[];
    readonly silenced: readonly PlacedSilenced[];
}

export async function notesOf(workshop: Workshop, document: LangiumDocument, naming: Naming): Promise<FileNotes> {
    const notes: (ReviewNotes & { file: string })[] = [];
    const silenced: PlacedSilenced[] = [];
    for (const recipe of workshop.recipes(document)) {
        // A recipe that could not be worked out has said so among the findings.
        const answer = await workshop.ask({ do: 'notes', recipe }).catch(() => undefined);
        if (answer === undefined) continue;
        notes.push({ file: naming(document), ...answer.notes });
        silenced.push(...placedSilenced(workshop, document, answer.silenced, naming));
    }
    return { notes, silenced };
}
