package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings.WordOrder;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * A line of the register map together with where its value comes from.
 *
 * @param row the line
 * @param note what a user must know of it
 * @param order an order of words of its own, whatever the map's is
 * @param source how it is written
 * @param <S> state that the value is taken from
 */
record Register<S>(RegisterRow row, String note, Optional<WordOrder> order, Source<S> source) {

  /** Writes a register's value. */
  interface Source<S> {
    /** Takes the value from the state and writes it. */
    void write(BlockWriter writer, RegisterRow row, S state);
  }

  /** Returns a register that holds a number. */
  static <S> Register<S> number(RegisterRow row, String note, ToDoubleFunction<S> value) {
    return new Register<>(
        row,
        note,
        Optional.empty(),
        (writer, line, state) -> writer.number(line, value.applyAsDouble(state)));
  }

  /** Returns a register that holds text. */
  static <S> Register<S> text(RegisterRow row, String note, Function<S, String> value) {
    return new Register<>(
        row,
        note,
        Optional.empty(),
        (writer, line, state) -> writer.text(line, value.apply(state)));
  }

  /** Returns a register that always holds the same number in an order of words of its own. */
  static <S> Register<S> constant(RegisterRow row, String note, double value, WordOrder own) {
    return new Register<>(
        row, note, Optional.of(own), (writer, line, state) -> writer.number(line, value, own));
  }

  /** Writes the value. */
  void write(BlockWriter writer, S state) {
    source.write(writer, row, state);
  }
}
