package io.strapline.level.vessel;

import static java.util.stream.Collectors.joining;

import java.util.List;

/** Puts a stack of sections into the words of the trade. Stateless. */
final class StackDescription {

  private StackDescription() {}

  static String of(List<Section> sections) {
    Section last = sections.get(sections.size() - 1);
    if (sections.size() == 1) {
      return straight(last, ", flat bottom");
    }
    String hopper = sections.size() == 2 ? hopper(sections.get(0), last) : "";
    return hopper.isEmpty() ? list(sections) : straight(last, hopper);
  }

  private static String straight(Section section, String below) {
    if (section instanceof CylinderSection cylinder) {
      return "upright " + cylinder.describe() + below;
    }
    if (section instanceof PrismSection prism) {
      return "rectangular bin " + size(prism) + below;
    }
    return section.describe();
  }

  private static String size(PrismSection prism) {
    return prism.plan().describe() + ", " + Dimensions.text(prism.heightMetres()) + " high";
  }

  /** Returns how the straight part stands on a cone or hopper of its own width; else nothing. */
  private static String hopper(Section below, Section straight) {
    if (below instanceof ConeSection cone
        && straight instanceof CylinderSection cylinder
        && cone.topDiameterMetres() == cylinder.diameterMetres()) {
      return cone(cone);
    }
    if (below instanceof PyramidSection pyramid
        && straight instanceof PrismSection prism
        && pyramid.top().equals(prism.plan())) {
      return pyramid(pyramid);
    }
    return "";
  }

  private static String cone(ConeSection cone) {
    String height = Dimensions.text(cone.heightMetres()) + " high";
    return cone.bottomDiameterMetres() == 0
        ? ", on a closed cone " + height
        : ", on a cone " + height + " with outlet " + Dimensions.text(cone.bottomDiameterMetres());
  }

  private static String pyramid(PyramidSection pyramid) {
    String height = Dimensions.text(pyramid.heightMetres()) + " high";
    return pyramid.bottom().areaSquareMetres() == 0
        ? ", on a closed hopper " + height
        : ", on a hopper " + height + " with outlet " + pyramid.bottom().describe();
  }

  private static String list(List<Section> sections) {
    return sections.stream()
        .map(Section::describe)
        .collect(joining("; ", sections.size() + " sections, bottom to top: ", ""));
  }
}
