import {
    AmbientLight,
    DirectionalLight,
    Group,
    HemisphereLight,
    Mesh,
    type MeshPhongMaterial,
    PCFShadowMap,
    PerspectiveCamera,
    Plane,
    Scene,
    Vector3,
    WebGLRenderer,
} from 'three';
import { heightsOf } from './exaggerate';
import { pieceGroup } from './piece-group';
import type { Bounds, PlacedPiece, RoundScene, RoundViewer } from './scene';

const viewAngle = 28;
/** Slower than this the picture is drawn coarser while it moves, ms. */
const tolerable = 60;
const coarse = 0.5;
const shadowSize = 2048;

/** @throws where there is no WebGL */
export function createViewer(canvas: HTMLCanvasElement): RoundViewer {
    return new Viewer(canvas);
}

class Viewer implements RoundViewer {
    private readonly renderer: WebGLRenderer;
    private readonly scene = new Scene();
    private readonly camera = new PerspectiveCamera(viewAngle, 1, 1, 1e4);
    private readonly light = new DirectionalLight('#fff4e2', 2.6);
    private readonly parts = new Group();
    private built: { readonly key: readonly unknown[]; readonly groups: readonly Group[] } | undefined;
    private shown: RoundScene | undefined;
    /** What is to be shown once it is built. */
    private next: RoundScene | undefined;
    private building = 0;
    private waiting = 0;
    private settling: ReturnType<typeof setTimeout> | undefined;
    private width = 1;
    private height = 1;
    private slow = false;
    /** What the shadows that are there were cast by. */
    private cast: readonly unknown[] = [];

    constructor(canvas: HTMLCanvasElement) {
        this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
        this.renderer.localClippingEnabled = true;
        this.renderer.shadowMap.enabled = true;
        this.renderer.shadowMap.type = PCFShadowMap;
        // Shadows are cast anew only when what casts them has changed, not when somebody walks around the piece.
        this.renderer.shadowMap.autoUpdate = false;
        this.light.castShadow = true;
        this.light.shadow.mapSize.set(shadowSize, shadowSize);
        this.scene.add(new HemisphereLight('#eef3ff', '#6b5a48', 1.15), new AmbientLight('#ffffff', 0.25));
        this.scene.add(this.light, this.light.target, this.parts);
    }

    /** What is to be built waits until the page has nothing else to do: typing goes before it. */
    show(scene: RoundScene): void {
        if (this.built !== undefined && !this.isBuilt(scene)) {
            this.next = scene;
            this.building ||= requestIdleCallback(() => this.showNext(), { timeout: 500 });
            return;
        }
        this.next = undefined;
        this.showNow(scene);
    }

    private showNext(): void {
        this.building = 0;
        const { next } = this;
        this.next = undefined;
        if (next !== undefined) this.showNow(next);
    }

    private showNow(scene: RoundScene): void {
        this.shown = scene;
        this.build(scene);
        if (this.waiting === 0) this.waiting = requestAnimationFrame(() => this.draw(this.slow));
        clearTimeout(this.settling);
        if (this.slow) this.settling = setTimeout(() => this.draw(false), 250);
    }

    resize(width: number, height: number): void {
        if (width === this.width && height === this.height) return;
        this.width = width;
        this.height = height;
        if (this.shown !== undefined) this.show(this.shown);
    }

    picture(width: number): string {
        const height = Math.round((width * this.height) / this.width);
        this.renderer.setPixelRatio(1);
        this.renderer.setSize(width, height, false);
        this.render();
        const data = this.renderer.domElement.toDataURL('image/png');
        this.draw(false);
        return data.slice(data.indexOf(',') + 1);
    }

    dispose(): void {
        cancelAnimationFrame(this.waiting);
        cancelIdleCallback(this.building);
        clearTimeout(this.settling);
        this.clear();
        this.light.shadow.map?.dispose();
        this.renderer.dispose();
        this.renderer.forceContextLoss();
    }

    private draw(coarsely: boolean): void {
        this.waiting = 0;
        this.renderer.setPixelRatio(coarsely ? coarse : Math.min(2, devicePixelRatio || 1));
        this.renderer.setSize(this.width, this.height, false);
        const begun = performance.now();
        this.render();
        if (coarsely) return;
        // Otherwise only the order to draw is measured.
        this.waitUntilDrawn();
        this.slow = performance.now() - begun > tolerable;
    }

    private waitUntilDrawn(): void {
        const gl = this.renderer.getContext();
        gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4));
    }

    private render(): void {
        if (this.shown === undefined || this.built === undefined) return;
        this.built.groups.forEach((group, index) => {
            lay(group, this.shown!.pieces[index]!, this.shown!.heights);
        });
        this.aim(this.shown);
        this.renderer.render(this.scene, this.camera);
    }

    /** Meshes are made anew only when a piece, the heights or the section has changed. */
    private build(scene: RoundScene): void {
        if (this.isBuilt(scene)) return;
        const { pieces, heights, section } = scene;
        this.clear();
        const groups = pieces.map(({ view }) => {
            const cutting = section === undefined ? [] : [new Plane(new Vector3(0, 0, -1), section.y - view.height / 2)];
            return pieceGroup(view, heights, cutting, section);
        });
        this.parts.add(...groups);
        this.built = { key: keyOf(scene), groups };
    }

    private isBuilt(scene: RoundScene): boolean {
        const key = keyOf(scene);
        return key.length === this.built?.key.length && key.every((each, i) => each === this.built!.key[i]);
    }

    private clear(): void {
        this.parts.traverse((each) => {
            if (!(each instanceof Mesh)) return;
            each.geometry.dispose();
            (each.material as MeshPhongMaterial).dispose();
        });
        this.parts.clear();
        this.built = undefined;
    }

    private aim({ pieces, within, orbit, light, heights }: RoundScene): void {
        const { left, right, near, far } = within ?? boundsOf(pieces);
        const size = { width: right - left, height: near - far };
        const thick = Math.max(...pieces.map(({ view, z }) => z + heightsOf(view, heights)(view.thickness)));
        const middle = new Vector3(
            (left + right) / 2 + orbit.x * size.width,
            thick * 0.6,
            (near + far) / 2 + orbit.y * size.height,
        );
        const radius = Math.hypot(size.width, size.height, thick) / 2;
        this.camera.aspect = this.width / this.height;
        const wide = Math.tan((viewAngle / 2) * (Math.PI / 180)) * Math.min(1, this.camera.aspect);
        const distance = (radius * 0.9) / wide / orbit.zoom + thick;
        this.camera.near = distance / 50;
        this.camera.far = distance + 6 * radius;
        const flat = Math.cos(orbit.above);
        this.camera.position.set(
            middle.x + distance * flat * Math.sin(orbit.around),
            middle.y + distance * Math.sin(orbit.above),
            middle.z + distance * flat * Math.cos(orbit.around) + 1e-4 * distance,
        );
        this.camera.lookAt(middle);
        this.camera.updateProjectionMatrix();
        const reach = Math.min(radius, (radius / orbit.zoom) * 1.3);
        const { shadow } = this.light;
        const cast = [
            this.built,
            light.around,
            light.above,
            reach,
            middle.x,
            middle.z,
            ...pieces.flatMap(({ x, y, z, turn }) => [x, y, z, turn]),
        ];
        this.renderer.shadowMap.needsUpdate = cast.length !== this.cast.length || cast.some((each, i) => each !== this.cast[i]);
        this.cast = cast;
        this.light.position.set(
            middle.x + 3 * radius * Math.cos(light.above) * Math.cos(light.around),
            middle.y + 3 * radius * Math.sin(light.above),
            middle.z - 3 * radius * Math.cos(light.above) * Math.sin(light.around),
        );
        this.light.target.position.copy(middle);
        Object.assign(shadow.camera, { left: -reach, right: reach, top: reach, bottom: -reach, near: radius, far: 5 * radius });
        shadow.camera.updateProjectionMatrix();
    }
}

/** All that meshes are made of. */
function keyOf({ pieces, heights, section }: RoundScene): readonly unknown[] {
    return [heights, section, ...pieces.map(({ view }) => view)];
}

/** A piece where it lies, turned about the line through its point that runs away from the maker. */
function lay(group: Group, { view, x, y, z, turn, about }: PlacedPiece, heights: number): void {
    const off = { x: (about?.x ?? view.width / 2) - view.width / 2, y: (about?.y ?? view.height / 2) - view.height / 2 };
    const thick = heightsOf(view, heights)(view.thickness);
    group.rotation.set(0, 0, turn);
    // Turned about half of its thickness, so that face down it lies as high as face up.
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    group.position.set(x - (off.x * cos - (thick / 2) * sin), z + thick / 2 - (off.x * sin + (thick / 2) * cos), y - off.y);
}

function boundsOf(pieces: readonly PlacedPiece[]): Bounds {
    const lefts = pieces.map(({ view, x }) => x - view.width / 2);
    const rights = pieces.map(({ view, x }) => x + view.width / 2);
    const fars = pieces.map(({ view, y }) => y - view.height / 2);
    const nears = pieces.map(({ view, y }) => y + view.height / 2);
    return { left: Math.min(...lefts), right: Math.max(...rights), far: Math.min(...fars), near: Math.max(...nears) };
}
