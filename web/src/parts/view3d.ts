import {
  AmbientLight, Box3, BufferGeometry, Color, DirectionalLight, LineBasicMaterial, LineSegments, Mesh, MeshLambertMaterial,
  Object3D, OrthographicCamera, Raycaster, Scene, Spherical, Vector2, Vector3, WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';

/** The directions from which the piece is looked at: right, up and towards the front. */
export const sides = { corner: [0.62, 0.5, 1], front: [0, 0, 1], side: [1, 0, 0.0001], above: [0, 1, 0.0001] } as const;
export type Side = keyof typeof sides;

interface Shown { object: Object3D; address: string; home: Vector3; faces: Mesh[]; edges: LineSegments[]; own: Color }

/** The piece on a canvas, drawn when something changes. Sizes are metres, up is y. */
export class PieceView {
  readonly #scene = new Scene();
  readonly #camera = new OrthographicCamera();
  readonly #renderer: WebGLRenderer;
  readonly #controls: OrbitControls;
  readonly #watch: ResizeObserver;
  #shown: Shown[] = [];
  #size = new Vector3(1, 1, 1);
  #waiting = 0;

  constructor(canvas: HTMLCanvasElement, pick: (address: string) => void) {
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.#renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    this.#scene.add(this.#camera, new AmbientLight(0xffffff, 1.9));
    const light = new DirectionalLight(0xffffff, 1.6);
    light.position.set(-0.5, 1, 0.6);
    this.#camera.add(light);
    this.#controls = new OrbitControls(this.#camera, canvas);
    this.#controls.enablePan = false;
    this.#controls.minZoom = 0.4;
    this.#controls.maxZoom = 12;
    this.#controls.addEventListener('change', () => this.draw());
    let from = new Vector2();
    canvas.addEventListener('pointerdown', (e) => (from = new Vector2(e.clientX, e.clientY)));
    canvas.addEventListener('pointerup', (e) => {
      if (from.distanceTo(new Vector2(e.clientX, e.clientY)) < 5) pick(this.#at(e, canvas));
    });
    this.#watch = new ResizeObserver(() => this.#fit());
    this.#watch.observe(canvas);
    this.look('corner');
  }

  async load(data: ArrayBuffer): Promise<void> {
    const { scene } = await new GLTFLoader().parseAsync(data, '');
    this.#drop();
    this.#moved = 0;
    this.#scene.add(scene);
    scene.traverse((object) => {
      const address: unknown = object.userData.address;
      if (typeof address !== 'string') return;
      const s: Shown = { object, address, home: object.position.clone(), faces: [], edges: [], own: new Color() };
      object.traverse((part) => {
        if (part instanceof LineSegments) {
          part.material = new LineBasicMaterial({ transparent: true });
          s.edges.push(part);
        } else if (part instanceof Mesh) {
          s.own.copy((part.material as MeshLambertMaterial).color);
          part.material = new MeshLambertMaterial({ flatShading: true, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1, transparent: true });
          s.faces.push(part);
        }
      });
      this.#shown.push(s);
    });
    const box = new Box3().setFromObject(scene);
    box.getSize(this.#size);
    const from = this.#camera.position.clone().sub(this.#controls.target);
    box.getCenter(this.#controls.target);
    this.#camera.position.copy(this.#controls.target).add(from);
    this.#controls.update();
    this.#fit();
  }

  /** Pulls each part towards the front by its number of steps; 0 is closed, 1 wide open. */
  apart(share: number, pull: (address: string) => number): void {
    const step = this.#size.z * 0.75 * share;
    for (const s of this.#shown) s.object.position.copy(s.home).add(new Vector3(0, 0, step * pull(s.address)));
    // The eye follows the middle of what is drawn apart.
    const middle = new Vector3(0, 0, step / 2 - this.#moved);
    this.#moved = step / 2;
    this.#controls.target.add(middle);
    this.#camera.position.add(middle);
    this.#controls.update();
    this.#fit(share);
  }

  /** Shows the chosen parts in full and all others faintly; none chosen shows all. */
  colour(chosen: (address: string) => boolean, look: { ink: string; chosen: string; white: boolean }): void {
    const some = this.#shown.some((s) => chosen(s.address));
    for (const s of this.#shown) {
      const on = chosen(s.address);
      for (const m of s.faces) {
        const material = m.material as MeshLambertMaterial;
        material.color.copy(on ? new Color(look.chosen) : look.white ? new Color(0xffffff) : s.own);
        material.opacity = some && !on ? 0.1 : 1;
        material.depthWrite = !some || on;
        m.renderOrder = on ? 0 : 1;
      }
      for (const e of s.edges) {
        const material = e.material as LineBasicMaterial;
        material.color.set(look.ink);
        material.opacity = some && !on ? 0.28 : 1;
      }
    }
    this.draw();
  }

  look(side: Side): void {
    const [x, y, z] = sides[side];
    this.#camera.position.copy(this.#controls.target).addScaledVector(new Vector3(x, y, z).normalize(), 10);
    this.#controls.update();
    this.draw();
  }

  /** Turns the eye round the piece by angles in radians. */
  turn(around: number, over: number): void {
    const place = new Spherical().setFromVector3(this.#camera.position.clone().sub(this.#controls.target));
    place.theta += around;
    place.phi = Math.max(0.01, Math.min(Math.PI - 0.01, place.phi + over));
    this.#camera.position.setFromSpherical(place).add(this.#controls.target);
    this.#controls.update();
    this.draw();
  }

  zoom(by: number): void {
    this.#camera.zoom = Math.max(0.4, Math.min(12, this.#camera.zoom * by));
    this.#camera.updateProjectionMatrix();
    this.draw();
  }

  draw(): void {
    if (this.#waiting) return;
    this.#waiting = requestAnimationFrame(() => {
      this.#waiting = 0;
      this.#renderer.render(this.#scene, this.#camera);
    });
  }

  close(): void {
    cancelAnimationFrame(this.#waiting);
    this.#watch.disconnect();
    this.#controls.dispose();
    this.#drop();
    this.#renderer.dispose();
  }

  /** Fits the piece, drawn apart as it is, into the canvas. */
  #fit(share = this.#share): void {
    this.#share = share;
    const { clientWidth: w, clientHeight: h } = this.#renderer.domElement;
    if (w === 0 || h === 0) return;
    this.#renderer.setSize(w, h, false);
    const deep = this.#size.z * (1 + 0.75 * share);
    const reach = 0.54 * Math.hypot(this.#size.x, this.#size.y, deep);
    const k = Math.max(reach / w, reach / h);
    Object.assign(this.#camera, { left: -w * k, right: w * k, top: h * k, bottom: -h * k, near: 0.01, far: 40 });
    this.#camera.updateProjectionMatrix();
    this.draw();
  }
  #share = 0;
  #moved = 0;

  #at(e: PointerEvent, canvas: HTMLCanvasElement): string {
    const box = canvas.getBoundingClientRect();
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2(((e.clientX - box.left) / box.width) * 2 - 1, 1 - ((e.clientY - box.top) / box.height) * 2), this.#camera);
    const hit = ray.intersectObjects(this.#shown.flatMap((s) => s.faces), false)[0];
    return this.#shown.find((s) => hit && s.faces.includes(hit.object as Mesh))?.address ?? '';
  }

  #drop(): void {
    for (const s of this.#shown) {
      for (const part of [...s.faces, ...s.edges]) {
        (part.geometry as BufferGeometry).dispose();
        (part.material as MeshLambertMaterial | LineBasicMaterial).dispose();
      }
      s.object.removeFromParent();
    }
    this.#shown = [];
  }
}
