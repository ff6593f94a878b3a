/**
 * The lens and the test plate of `piece.json`, in millimetres.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { FileLengths } from "./_file_lengths.ts";
import type {
  LensRecord,
  SecondSurface,
  TestPlateRecord,
} from "./lens_record.ts";
import type { LensFile, LensSurfaceFile, TestPlateFile } from "./piece_file.ts";

const ZERO = millimetres(0);

function second(
  file: LensSurfaceFile,
  read: FileLengths,
): SecondSurface | undefined {
  const path = "lens.second_surface";
  const radius = read.length(file.radius, `${path}.radius`);
  const doubt = read.length(
    file.radius_uncertainty,
    `${path}.radius_uncertainty`,
    "0 or more",
  );
  const { form } = file;
  if (form === "flat") {
    if (file.radius === undefined) return { form };
    return read.say(
      "refused",
      "wrong-value",
      `${path}.radius`,
      "a flat has no radius",
      { mend: "take it out, or correct the form" },
    );
  }
  if (file.radius === undefined || file.radius_uncertainty === undefined) {
    return read.say(
      "refused",
      "missing-key",
      path,
      "a curved second surface needs its radius and the uncertainty of that",
      {
        mend: `add ${
          [
            ...(file.radius === undefined ? ['"radius"'] : []),
            ...(file.radius_uncertainty === undefined
              ? ['"radius_uncertainty"']
              : []),
          ].join(" and ")
        }, or make it "flat"`,
      },
    );
  }
  return radius === undefined || doubt === undefined
    ? undefined
    : { form, radius, radiusUncertainty: doubt };
}

/** Makes a lens; `undefined` when something that it needs was refused. */
export function lensOfFile(
  file: LensFile,
  read: FileLengths,
): LensRecord | undefined {
  const before = read.refusals;
  const thickness = read.length(file.thickness, "lens.thickness");
  const doubt = read.length(
    file.thickness_uncertainty,
    "lens.thickness_uncertainty",
    "0 or more",
  );
  const other = file.second_surface === undefined
    ? undefined
    : second(file.second_surface, read);
  if (file.second_surface !== undefined && file.thickness === undefined) {
    read.say(
      "refused",
      "missing-key",
      "lens.thickness",
      "a lens of two surfaces needs its thickness at the centre",
      { mend: 'add "thickness"' },
    );
  }
  if (read.refusals > before) return undefined;
  return {
    index: file.index,
    indexUncertainty: file.index_uncertainty ?? 0,
    ...(thickness === undefined ? {} : { thickness }),
    thicknessUncertainty: doubt ?? ZERO,
    ...(other === undefined ? {} : { second: other }),
  };
}

/** Makes what a test plate showed; `undefined` when it was refused. */
export function testPlateOfFile(
  file: TestPlateFile,
  work: Millimetres,
  read: FileLengths,
): TestPlateRecord | undefined {
  const before = read.refusals;
  const length = (key: keyof TestPlateFile & string) =>
    read.length(
      file[key] as string,
      `test_plate.${key}`,
      key === "radius_uncertainty" ? "0 or more" : "above 0",
    );
  const radius = length("radius");
  const radiusUncertainty = length("radius_uncertainty");
  const diameter = length("diameter");
  const wavelength = length("wavelength");
  if (radius !== undefined && diameter !== undefined && diameter > 2 * radius) {
    read.say(
      "refused",
      "wrong-value",
      "test_plate.radius",
      "the radius of the plate is less than half the diameter over which fringes were counted",
      { value: `${radius} mm`, mend: "correct radius or diameter" },
    );
  }
  if (diameter !== undefined && diameter > work) {
    read.say(
      "refused",
      "wrong-value",
      "test_plate.diameter",
      "fringes cannot be counted over more than the work",
      { value: `${diameter} mm`, expected: `at most ${work} mm` },
    );
  }
  if (wavelength !== undefined && (wavelength < 2e-4 || wavelength > 2e-3)) {
    read.say(
      "refused",
      "wrong-value",
      "test_plate.wavelength",
      "no light that is seen has this wavelength",
      { value: `${wavelength} mm`, mend: 'write it such as "0.589 µm"' },
    );
  }
  if (
    radius === undefined || radiusUncertainty === undefined ||
    diameter === undefined || wavelength === undefined ||
    read.refusals > before
  ) {
    return undefined;
  }
  const { fringe_uncertainty: doubt } = file;
  return {
    id: file.id,
    radius,
    radiusUncertainty,
    diameter,
    fringes: file.fringes,
    ...(doubt === undefined ? {} : { fringeUncertainty: doubt }),
    touch: file.touch,
    wavelength,
  };
}
