/**
 * The readings of a folder: objects while they are few, columns when they are
 * many.
 *
 * @module
 */
import { GrowingNumbers } from "../numerics/growing_numbers.ts";
import { lazyList } from "../numerics/lazy_list.ts";
import { millimetres } from "../units/length.ts";
import { CodedColumn } from "./_coded_column.ts";
import type { Reading, ShownValue, Zone } from "./reading.ts";

/** More readings than this are kept in columns. */
export const MOST_OBJECTS = 20_000;

type Foot = Reading["foot"];
type Other = Reading["other"];

const keyOfZone = ({ label, distance }: Zone): string => `${distance} ${label}`;
const keyOfFoot = (foot: Foot): string => JSON.stringify(foot);
const keyOfShown = (shown: ShownValue | undefined): string =>
  shown === undefined ? "" : `${shown.amount} ${shown.unit}`;
const keyOfOther = (other: Other): string => JSON.stringify(other) ?? "";

/** Readings in columns: about 40 bytes each, and each text once. */
class ReadingColumns {
  readonly #sag = new GrowingNumbers(Float64Array);
  readonly #line = new GrowingNumbers(Uint32Array);
  readonly #order = new GrowingNumbers(Uint32Array);
  readonly #zone = new CodedColumn<Zone>(keyOfZone);
  readonly #foot = new CodedColumn<Foot>(keyOfFoot);
  readonly #shown = new CodedColumn<ShownValue | undefined>(keyOfShown);
  readonly #zeroBeforeShown = new CodedColumn<ShownValue | undefined>(
    keyOfShown,
  );
  readonly #other = new CodedColumn<Other>(keyOfOther);
  readonly #plain = {
    file: new CodedColumn<Reading["file"]>(),
    session: new CodedColumn<Reading["session"]>(),
    takenAt: new CodedColumn<Reading["takenAt"]>(),
    grade: new CodedColumn<Reading["grade"]>(),
    ring: new CodedColumn<Reading["ring"]>(),
    zeroing: new CodedColumn<Reading["zeroing"]>(),
    zeroBefore: new CodedColumn<Reading["zeroBefore"]>(),
    diameterDegrees: new CodedColumn<Reading["diameterDegrees"]>(),
    on: new CodedColumn<Reading["on"]>(),
    offset: new CodedColumn<Reading["offset"]>(),
    step: new CodedColumn<Reading["step"]>(),
    unit: new CodedColumn<Reading["unit"]>(),
    operator: new CodedColumn<Reading["operator"]>(),
    temperatureAir: new CodedColumn<Reading["temperatureAir"]>(),
    temperatureBench: new CodedColumn<Reading["temperatureBench"]>(),
    temperatureWork: new CodedColumn<Reading["temperatureWork"]>(),
    note: new CodedColumn<Reading["note"]>(),
  };

  add(reading: Reading): void {
    this.#sag.push(reading.sag);
    this.#line.push(reading.line);
    this.#order.push(reading.order);
    this.#zone.push(reading.zone);
    this.#foot.push(reading.foot);
    this.#shown.push(reading.shown);
    this.#zeroBeforeShown.push(reading.zeroBeforeShown);
    this.#other.push(reading.other);
    const { file, session, takenAt, grade, ring, zeroing, zeroBefore } =
      this.#plain;
    file.push(reading.file);
    session.push(reading.session);
    takenAt.push(reading.takenAt);
    grade.push(reading.grade);
    ring.push(reading.ring);
    zeroing.push(reading.zeroing);
    zeroBefore.push(reading.zeroBefore);
    const { diameterDegrees, on, offset, step, unit, operator } = this.#plain;
    diameterDegrees.push(reading.diameterDegrees);
    on.push(reading.on);
    offset.push(reading.offset);
    step.push(reading.step);
    unit.push(reading.unit);
    operator.push(reading.operator);
    const { temperatureAir, temperatureBench, temperatureWork, note } =
      this.#plain;
    temperatureAir.push(reading.temperatureAir);
    temperatureBench.push(reading.temperatureBench);
    temperatureWork.push(reading.temperatureWork);
    note.push(reading.note);
  }

  get length(): number {
    return this.#sag.length;
  }

  /** The reading at an index, as it was added. */
  at(index: number): Reading {
    const plain = this.#plain;
    const reading: Reading = {
      file: plain.file.at(index),
      line: this.#line.at(index),
      order: this.#order.at(index),
      session: plain.session.at(index),
      takenAt: plain.takenAt.at(index),
      grade: plain.grade.at(index),
      ring: plain.ring.at(index),
      zeroing: plain.zeroing.at(index),
      zeroBefore: plain.zeroBefore.at(index),
      diameterDegrees: plain.diameterDegrees.at(index),
      foot: this.#foot.at(index),
      on: plain.on.at(index),
      zone: this.#zone.at(index),
      offset: plain.offset.at(index),
      sag: millimetres(this.#sag.at(index)),
      step: plain.step.at(index),
      unit: plain.unit.at(index),
      operator: plain.operator.at(index),
      temperatureAir: plain.temperatureAir.at(index),
      temperatureBench: plain.temperatureBench.at(index),
      temperatureWork: plain.temperatureWork.at(index),
      shown: this.#shown.at(index),
      zeroBeforeShown: this.#zeroBeforeShown.at(index),
      note: plain.note.at(index),
    };
    const other = this.#other.at(index);
    return other === undefined ? reading : { ...reading, other };
  }
}

/** Takes readings one by one and gives them all as one list. */
export class KeptReadings {
  #objects: Reading[] = [];
  #columns: ReadingColumns | undefined;

  /** How many there are. */
  get length(): number {
    return this.#columns?.length ?? this.#objects.length;
  }

  /** Adds one. */
  add(reading: Reading): void {
    if (this.#columns === undefined) {
      this.#objects.push(reading);
      if (this.#objects.length > MOST_OBJECTS) this.#fold();
    } else this.#columns.add(reading);
  }

  #fold(): void {
    this.#columns = new ReadingColumns();
    for (const reading of this.#objects) this.#columns.add(reading);
    this.#objects = [];
  }

  /** All of them, in the order they came. */
  list(): readonly Reading[] {
    const columns = this.#columns;
    return columns === undefined
      ? this.#objects
      : lazyList(columns.length, (index) => columns.at(index));
  }
}
