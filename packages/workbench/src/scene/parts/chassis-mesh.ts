import { BufferAttribute, BufferGeometry, DoubleSide, Group, Mesh, ShaderMaterial } from "three";
import type { Inks } from "../kit/materials.ts";
import type { MeshPicture } from "../types.ts";

/**
 * The chassis mesh in pencil, three flat tones by how a face is turned, over what is drawn already and seen through as
 * tracing paper is: its depth goes first, so that only its nearest face is laid over the parts. Not drawn before it is placed.
 */
export class ChassisMeshPart {
  readonly object = new Group();
  private readonly materials: readonly ShaderMaterial[];
  private meshes: readonly Mesh<BufferGeometry, ShaderMaterial>[] = [];
  private drawn: Float32Array | null = null;

  constructor(inks: Inks) {
    this.materials = [meshMaterial(inks, false), meshMaterial(inks, true)];
  }

  show(picture: MeshPicture | null): void {
    if (picture?.position !== this.drawn) this.release();
    if (!picture) return;
    if (this.meshes.length === 0) {
      const geometry = new BufferGeometry();
      geometry.setAttribute("position", new BufferAttribute(picture.position, 3));
      geometry.setIndex(new BufferAttribute(picture.index, 1));
      this.meshes = this.materials.map((material, i) => {
        const mesh = new Mesh(geometry, material);
        mesh.frustumCulled = false;
        mesh.matrixAutoUpdate = false;
        mesh.renderOrder = 4 + i;
        this.object.add(mesh);
        return mesh;
      });
      this.drawn = picture.position;
    }
    for (const mesh of this.meshes) {
      mesh.visible = picture.placement !== null;
      if (picture.placement) mesh.matrix.fromArray([...picture.placement]);
      mesh.matrixWorldNeedsUpdate = true;
    }
  }

  dispose(): void {
    this.release();
    for (const material of this.materials) material.dispose();
  }

  private release(): void {
    this.meshes[0]?.geometry.dispose();
    for (const mesh of this.meshes) mesh.removeFromParent();
    this.meshes = [];
    this.drawn = null;
  }
}

const meshMaterial = (inks: Inks, isInked: boolean): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: inks.uniforms,
    side: DoubleSide,
    transparent: true,
    colorWrite: isInked,
    depthWrite: !isInked,
    polygonOffset: true,
    polygonOffsetFactor: 2,
    polygonOffsetUnits: 4,
    vertexShader: /* glsl */ `
      varying vec3 vAt;
      void main() {
        vec4 at = modelViewMatrix * vec4(position, 1.0);
        vAt = at.xyz;
        gl_Position = projectionMatrix * at;
      }`,
    fragmentShader: /* glsl */ `
      uniform vec3 paper, pencil;
      varying vec3 vAt;
      void main() {
        // The face's own normal, whatever the file says of it.
        vec3 facing = normalize(cross(dFdx(vAt), dFdy(vAt)));
        float light = abs(dot(facing, normalize(vec3(-0.45, 0.6, 0.65))));
        float tone = light > 0.72 ? 0.12 : light > 0.38 ? 0.3 : 0.5;
        gl_FragColor = vec4(mix(paper, pencil, tone), 0.62);
      }`,
  });
