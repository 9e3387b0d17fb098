import type { Where } from '../quantity/where';
import type { Finding } from '../recipe/finding';
import { phrase } from '../recipe/phrase';

/** The figures and lines of the stock that a finding rests on, without which it would not be said. */
export interface Resting {
    readonly rests?: readonly (Where | undefined)[];
}

type Weighed = Pick<Finding, 'severity' | 'message' | 'where'> & Partial<Finding>;

/**
 * The one place that decides how grave a finding is by what it rests on. Where nobody has read a source for a built-in figure it is a
 * hint that says so; where sources disagree it stays as grave as it is, and says that the stricter counts. A figure that a maker has
 * written counts as it stands.
 */
export function graded<Told extends Weighed>(said: Told, rests: NonNullable<Resting['rests']>): Told {
    const unread = rests.find((where) => where?.grade === 'not checked');
    if (unread !== undefined)
        return {
            ...said,
            severity: 'hint',
            message: phrase`${said.message} Not checked: no source was read for it.`,
            related: [
                ...(said.related ?? []),
                {
                    message: phrase`This built-in line is not checked: write what the data sheet says into your own stock.`,
                    where: unread,
                },
            ],
        };
    if (!rests.some((where) => where?.grade === 'disputed')) return said;
    return { ...said, message: phrase`${said.message} Sources disagree; this goes by the stricter.` };
}
