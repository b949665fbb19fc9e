import java.io.BufferedReader;
import java.io.FileInputStream;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Date;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.logging.LogManager;
import javax.xml.parsers.DocumentBuilderFactory;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;
import org.verapdf.pdfa.validation.profiles.ErrorArgument;
import org.verapdf.pdfa.validation.profiles.ErrorArgumentImpl;
import org.verapdf.pdfa.validation.profiles.Profiles;
import org.verapdf.pdfa.validation.profiles.Rule;
import org.verapdf.pdfa.validation.profiles.ValidationProfile;
import org.verapdf.pdfa.validation.profiles.Variable;
import org.verapdf.pdfa.validation.validators.ValidatorFactory;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Holds PDF files against PDF/A-3a (ISO 19005-3) and PDF/UA-1 (ISO 14289-1) with the rules of veraPDF.
 *
 * <p>Each line of standard input names a file. For each, one line comes out per broken rule ("FAIL", the standard, clause
 * and test, what is wrong and where, divided by tabs), then "DONE", the number of checks made and the file. The rules are
 * read with the DOM, because the library's own reader of them needs classes that are not in the package this runs from.
 */
public final class PdfStandards {
  private static final String RULES = "/org/verapdf/pdfa/validation/";
  private static final int MOST_FAILURES = 50;

  private PdfStandards() {}

  private static List<Element> children(Element parent, String name) {
    List<Element> found = new ArrayList<>();
    if (parent == null) return found;
    for (Node child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
      if (child instanceof Element && child.getNodeName().equals(name)) found.add((Element) child);
    }
    return found;
  }

  private static Element child(Element parent, String name) {
    List<Element> found = children(parent, name);
    return found.isEmpty() ? null : found.get(0);
  }

  private static String text(Element element) {
    return element == null ? "" : element.getTextContent().trim();
  }

  private static Rule rule(Element row) {
    Element id = child(row, "id");
    Element error = child(row, "error");
    List<ErrorArgument> arguments = new ArrayList<>();
    for (Element given : children(child(error, "arguments"), "argument")) {
      String name = given.hasAttribute("name") ? given.getAttribute("name") : null;
      arguments.add(ErrorArgumentImpl.fromValues(text(given), name, null));
    }
    return Profiles.ruleFromValues(
        Profiles.ruleIdFromValues(
            PDFAFlavour.Specification.valueOf(id.getAttribute("specification")),
            id.getAttribute("clause"),
            Integer.parseInt(id.getAttribute("testNumber"))),
        row.getAttribute("object"),
        row.hasAttribute("deferred") ? Boolean.valueOf(row.getAttribute("deferred")) : null,
        row.getAttribute("tags"),
        text(child(row, "description")),
        text(child(row, "test")),
        Profiles.errorFromValues(text(child(error, "message")), arguments),
        new ArrayList<>());
  }

  private static ValidationProfile profile(PDFAFlavour flavour, String file, int atLeast) throws Exception {
    Element root;
    try (InputStream in = PdfStandards.class.getResourceAsStream(RULES + file)) {
      if (in == null) throw new IllegalStateException("no rules " + file + " in the class path");
      root = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(in).getDocumentElement();
    }
    Set<Rule> rules = new HashSet<>();
    for (Element row : children(child(root, "rules"), "rule")) rules.add(rule(row));
    if (rules.size() < atLeast) throw new IllegalStateException(file + " holds only " + rules.size() + " rules");
    Set<Variable> variables = new HashSet<>();
    for (Element row : children(child(root, "variables"), "variable")) {
      variables.add(
          Profiles.variableFromValues(
              row.getAttribute("name"),
              row.getAttribute("object"),
              text(child(row, "defaultValue")),
              text(child(row, "value"))));
    }
    return Profiles.profileFromValues(
        flavour, Profiles.profileDetailsFromValues(file, "", "", new Date()), "", rules, variables);
  }

  private static String oneLine(String words) {
    return words.replaceAll("\\s+", " ");
  }

  private static void check(List<ValidationProfile> profiles, String path) {
    int checks = 0;
    try (InputStream in = new FileInputStream(path);
        PDFAParser parser = Foundries.defaultInstance().createParser(in, profiles.get(0).getPDFAFlavour());
        PDFAValidator validator =
            ValidatorFactory.createValidatorByProfiles(profiles, MOST_FAILURES, false, true, false)) {
      for (ValidationResult result : validator.validateAll(parser)) {
        checks += result.getTotalAssertions();
        Set<String> rows = new TreeSet<>();
        for (TestAssertion made : result.getTestAssertions()) {
          if (made.getStatus() != TestAssertion.Status.FAILED) continue;
          String where = made.getLocation() == null ? "" : made.getLocation().getContext();
          rows.add(
              String.join(
                  "\t",
                  "FAIL",
                  result.getPDFAFlavour().getId(),
                  made.getRuleId().getClause() + "-" + made.getRuleId().getTestNumber(),
                  oneLine(String.valueOf(made.getMessage())),
                  oneLine(where)));
        }
        if (rows.isEmpty() && !result.isCompliant()) rows.add("FAIL\t" + result.getPDFAFlavour().getId() + "\t?\t\t");
        rows.forEach(System.out::println);
      }
    } catch (Throwable error) { // a file that cannot be read at all breaks every rule; the next one is still looked at
      System.out.println("FAIL\tfile\tunreadable\t" + oneLine(String.valueOf(error)) + "\t");
    }
    System.out.println("DONE\t" + checks + "\t" + path);
    System.out.flush();
  }

  public static void main(String[] none) throws Exception {
    LogManager.getLogManager().reset();
    VeraGreenfieldFoundryProvider.initialise();
    List<ValidationProfile> profiles =
        List.of(
            profile(PDFAFlavour.PDFA_3_A, "PDFA-3A.xml", 150), profile(PDFAFlavour.PDFUA_1, "PDFUA-1.xml", 100));
    BufferedReader lines = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = lines.readLine(); line != null; line = lines.readLine()) check(profiles, line);
  }
}
