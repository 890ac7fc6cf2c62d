package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** What {@code map} prints for the works of Kestrel Quay. */
class MapCommandTest {

  private static final String CONFIG = Path.of("..", "config", "kestrel-quay.yaml").toString();

  private static String run(String... options) {
    StringWriter out = new StringWriter();
    List<String> args = new ArrayList<>(List.of("map", CONFIG));
    args.addAll(List.of(options));
    CommandLine command = Main.commandLine().setOut(new PrintWriter(out));
    assertEquals(0, command.execute(args.toArray(String[]::new)));
    return out.toString();
  }

  @Test
  void csvGivesEveryRegisterWithAddressesAndReferences() {
    List<String> lines = run("--csv", "--registers").lines().toList();
    assertEquals("point,address,hex,input,holding,type,order,name,unit,step,note", lines.get(0));
    assertEquals(
        "plant,0,0000,300001,400001,uint16,,magic,,1,always 21324 (534C hex)", lines.get(1));
    assertTrue(lines.contains("LT-101,134,0086,300135,400135,float32,ABCD,level,m,1,"));
    assertTrue(lines.contains("LT-101,152,0098,300153,400153,int32,ABCD,level,m,0.001,"));
    // A note with a comma stands in quotes, as RFC 4180 wants it.
    assertTrue(
        lines.stream()
            .anyMatch(line -> line.endsWith("\"of the level: 192 good, 64 uncertain, 0 bad\"")));
  }

  @Test
  void textListsRegistersInputsAndNodes() {
    String text = run();
    assertTrue(text.contains("400135"));
    assertTrue(text.contains("high-high active"));
    assertTrue(text.contains("nsu=urn:strapline:bridge:points;s=LT-101."));
    assertFalse(text.lines().anyMatch(line -> line.endsWith(" ")));
  }

  @Test
  void markdownRowsAllHaveTheColumnsOfTheHead() {
    for (String line : run("--markdown", "--inputs").lines().toList()) {
      assertEquals(12, line.chars().filter(c -> c == '|').count(), line);
    }
  }

  @Test
  void jsonIsOneObjectWithAListForEachTable() throws IOException {
    List<String> lists = new ArrayList<>();
    int addresses = 0;
    try (JsonParser json = new JsonFactory().createParser(run("--json"))) {
      JsonToken token = json.nextToken();
      while (token != null) {
        if (token == JsonToken.START_ARRAY) {
          lists.add(String.valueOf(json.currentName()));
        }
        if (token == JsonToken.VALUE_NUMBER_INT && "address".equals(json.currentName())) {
          addresses++;
        }
        token = json.nextToken();
      }
    }
    assertEquals(List.of("registers", "discreteInputs", "nodes"), lists);
    assertEquals(
        run("--csv", "--registers").lines().count()
            - 1
            + run("--csv", "--inputs").lines().count()
            - 1,
        addresses);
  }

  @Test
  void htmlIsOneWholePageWithoutScriptsOrAnythingFromElsewhere() throws Exception {
    String page = run("--html");
    assertTrue(page.startsWith("<!DOCTYPE html>"));
    for (String foreign : List.of("<script", "http:", "https:", "src=", "url(", "@import")) {
      assertFalse(page.contains(foreign), foreign);
    }
    // Well-formed apart from the two void elements of the head, so a strict reader can check it.
    String strict = page.replace("<!DOCTYPE html>", "").replaceAll("<meta [^>]*>", "");
    org.w3c.dom.Document document =
        javax.xml.parsers.DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new org.xml.sax.InputSource(new java.io.StringReader(strict)));
    assertEquals(3, document.getElementsByTagName("table").getLength());
    assertEquals(3, document.getElementsByTagName("caption").getLength());
    int rows = 0;
    for (String part : List.of("--registers", "--inputs", "--nodes")) {
      rows += (int) run("--csv", part).lines().count();
    }
    assertEquals(rows, document.getElementsByTagName("tr").getLength());
    assertTrue(page.contains("<html lang=\"en\">"));
    assertTrue(page.contains("<title>Kestrel Quay: registers and variables</title>"));
    // Every link leads somewhere on the page.
    int links = document.getElementsByTagName("a").getLength();
    assertTrue(links > 3, () -> links + " links");
    for (int i = 0; i < links; i++) {
      org.w3c.dom.Element link = (org.w3c.dom.Element) document.getElementsByTagName("a").item(i);
      assertTrue(page.contains("id=\"" + link.getAttribute("href").substring(1) + "\""));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"--csv --json", "--csv --html", "--registers --nodes"})
  void choicesThatExcludeEachOtherAreRefused(String options) {
    List<String> args = new ArrayList<>(List.of("map", CONFIG));
    args.addAll(List.of(options.split(" ", -1)));
    CommandLine command = Main.commandLine().setErr(new PrintWriter(new StringWriter()));
    assertEquals(ExitCodes.USAGE, command.execute(args.toArray(String[]::new)));
  }
}
