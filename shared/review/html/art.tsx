import { showArea } from '../../quantity/show';
import type { ArtPicture } from '../film-strip';
import { oneLine } from '../one-line';
import { artLine } from '../wording';
import { Shape } from './paths';

/** What of a drawing burns in both versions, in the later only, in the earlier only. */
export function Art({ picture: { review, width, height, gained, lost, kept } }: { picture: ArtPicture }) {
    const margin = 0.04 * Math.max(width, height, 1);
    const box = `${-margin} ${-margin} ${width + 2 * margin} ${height + 2 * margin}`;
    const hair = Math.max(width, height) / 500;
    return (
        <figure>
            <svg class="picture" viewBox={box} role="img" aria-label={oneLine(`art ${review.name}: ${artLine(review)}`)}>
                <rect width={width} height={height} fill="#fff" stroke="#8a8172" stroke-width={hair} />
                <Shape id={kept} fill="#b9b1a2" />
                <Shape
                    id={lost}
                    fill="url(#lost)"
                    stroke="#a33a12"
                    stroke-width={hair}
                    stroke-dasharray={`${4 * hair} ${3 * hair}`}
                />
                <Shape id={gained} fill="url(#gained)" stroke="#0b5d3b" stroke-width={hair} />
            </svg>
            <figcaption class="key">
                <span>{oneLine(review.name)}</span>
                <Key paint="#b9b1a2" text={`burns in both: ${showArea(review.kept)}`} />
                <Key paint="url(#gained)" text={`burns now: ${showArea(review.gained)}`} />
                <Key paint="url(#lost)" text={`no longer burns: ${showArea(review.lost)}`} />
            </figcaption>
        </figure>
    );
}

function Key({ paint, text }: { paint: string; text: string }) {
    return (
        <span>
            <svg viewBox="0 0 13 7" aria-hidden="true">
                <rect width="13" height="7" fill={paint} />
            </svg>{' '}
            {text}
        </span>
    );
}
