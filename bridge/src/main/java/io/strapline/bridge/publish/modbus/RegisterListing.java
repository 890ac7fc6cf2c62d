package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.level.reading.Cause;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The register map as lists for people and for import into other tools, printed from the definition
 * that also writes the registers. Stateless.
 */
public final class RegisterListing {

  private RegisterListing() {}

  /**
   * One register value or discrete input of a plant. Immutable.
   *
   * @param owner tag of the point; {@code plant} for the plant's block
   * @param table what it is read as
   * @param address PDU address, counted from 0
   * @param order order of words and bytes; empty for single registers, bits and text
   * @param entry what lies there
   */
  public record Line(String owner, Table table, int address, String order, Entry entry) {

    /** Returns the PDU address in hexadecimal, four digits. */
    public String hex() {
      return String.format(Locale.ROOT, "%04X", address);
    }

    /** Returns the reference number of function 04 or 02, six digits, counted from 1. */
    public String readOnlyReference() {
      return reference(table == Table.REGISTER ? '3' : '1');
    }

    /** Returns the reference number of function 03 or 01, six digits, counted from 1. */
    public String otherReference() {
      return reference(table == Table.REGISTER ? '4' : '0');
    }

    private String reference(char tableDigit) {
      return String.format(Locale.ROOT, "%c%05d", tableDigit, address + 1);
    }
  }

  /**
   * What lies at an address. Immutable.
   *
   * @param type how the value lies in registers
   * @param name what it is
   * @param unit of the number after multiplying by {@code step}; empty for none
   * @param step what one count stands for
   * @param note what a user must know of it; may be empty
   */
  public record Entry(String type, String name, String unit, double step, String note) {}

  /** What a line is read as. */
  public enum Table {
    /** By functions 03 and 04 alike. */
    REGISTER,
    /** By functions 02 and 01 alike. */
    DISCRETE_INPUT
  }

  /** Returns all lines of a plant: its own block, then the points in the order of the file. */
  public static List<Line> of(PlantSettings plant) {
    String order = plant.modbus().wordOrder().name();
    List<Line> lines = new ArrayList<>();
    add(lines, "plant", 0, PlantBlock.REGISTERS, order);
    addBits(lines, "plant", 0, Bit.PLANT);
    for (Map.Entry<String, Integer> block : RegisterMap.of(plant).blocks().entrySet()) {
      int start = RegisterMap.BLOCK * block.getValue();
      add(lines, block.getKey(), start, PointBlock.REGISTERS, order);
      addBits(lines, block.getKey(), start, Bit.POINT);
    }
    return List.copyOf(lines);
  }

  private static <S> void add(
      List<Line> lines, String owner, int start, List<Register<S>> registers, String order) {
    for (Register<S> register : registers) {
      RegisterRow row = register.row();
      Entry entry =
          new Entry(row.type().label(), row.name(), row.unit(), row.step(), register.note());
      String own = row.type().isOrdered() ? register.order().map(Enum::name).orElse(order) : "";
      lines.add(new Line(owner, Table.REGISTER, start + row.offset(), own, entry));
    }
  }

  private static <S> void addBits(List<Line> lines, String owner, int start, List<Bit<S>> bits) {
    for (Bit<S> bit : bits) {
      Entry entry = new Entry("bit", bit.row().name(), "", 1, "");
      int address = start + bit.row().offset();
      lines.add(new Line(owner, Table.DISCRETE_INPUT, address, "", entry));
    }
  }

  /** Returns the part of the manual's page that is made from the definition, in Markdown. */
  public static String reference() {
    return String.join(
            "\n",
            "## Block 0: the plant",
            "",
            table(PlantBlock.REGISTERS),
            "Discrete inputs: " + bits(Bit.PLANT),
            "",
            "## Block N: a measuring point, at 100 * N",
            "",
            table(PointBlock.REGISTERS),
            "Discrete inputs: " + bits(Bit.POINT),
            "",
            "## Cause codes",
            "",
            causes())
        + "\n";
  }

  private static <S> String table(List<Register<S>> registers) {
    StringBuilder table =
        new StringBuilder("| + | type | name | unit | note |\n|--|--|--|--|--|\n");
    for (Register<S> register : registers) {
      RegisterRow row = register.row();
      table.append(
          String.format(
              Locale.ROOT,
              "| %d | %s | %s | %s | %s |%n",
              row.offset(),
              row.type().label(),
              row.name(),
              unit(row),
              register.note()));
    }
    return table.toString().replace("\r\n", "\n");
  }

  private static String unit(RegisterRow row) {
    String step = java.math.BigDecimal.valueOf(row.step()).stripTrailingZeros().toPlainString();
    return row.step() == 1 ? row.unit() : (step + " " + row.unit()).strip();
  }

  private static <S> String bits(List<Bit<S>> bits) {
    return String.join(
            "; ", bits.stream().map(bit -> bit.row().offset() + " " + bit.row().name()).toList())
        + ".";
  }

  private static String causes() {
    List<Cause> causes = new ArrayList<>(List.of(Cause.values()));
    causes.sort(java.util.Comparator.comparingInt(CauseCode::of));
    return String.join(
            "; ", causes.stream().map(cause -> CauseCode.of(cause) + " " + cause.text()).toList())
        + ".";
  }
}
