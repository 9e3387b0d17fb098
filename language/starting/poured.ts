import type { Resin } from '../../shared/recipe/stock';

/** Whether enough is known of a resin to mix it. */
export function isPoured({ mix, kind }: Resin): boolean {
    return mix !== undefined || kind === 'cyanoacrylate-fill';
}
