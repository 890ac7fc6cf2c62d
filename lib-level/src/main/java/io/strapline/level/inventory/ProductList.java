package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The products that a vessel may hold, by name. Upper and lower case and blanks around a name do
 * not matter. Immutable and safe for any thread.
 */
public final class ProductList {

  private final Map<String, Product> byKey;

  private ProductList(Map<String, Product> byKey) {
    this.byKey = Collections.unmodifiableMap(byKey);
  }

  /**
   * Returns the list of these products, in their order.
   *
   * @throws IllegalArgumentException if two products have the same name
   */
  public static ProductList of(List<Product> products) {
    Map<String, Product> byKey = new LinkedHashMap<>();
    for (Product product : Check.present("ProductList.products", products, "give the products")) {
      if (byKey.putIfAbsent(key(product.name()), product) != null) {
        throw Check.error(
            "ProductList.name",
            product.name(),
            "",
            "must occur once",
            "rename one of the products or leave it out");
      }
    }
    return new ProductList(byKey);
  }

  /** Returns the product of this name, or nothing. */
  public Optional<Product> find(String name) {
    return Optional.ofNullable(byKey.get(key(name)));
  }

  /**
   * Returns the product of this name.
   *
   * @throws IllegalArgumentException if there is none; the message lists the names there are
   */
  public Product get(String name) {
    return find(name)
        .orElseThrow(
            () ->
                Check.error(
                    "ProductList.name",
                    String.valueOf(name),
                    "",
                    "must be a product of the list",
                    "use one of: " + String.join(", ", names())));
  }

  /** Returns all products in the order given. */
  public List<Product> products() {
    return List.copyOf(byKey.values());
  }

  private List<String> names() {
    return byKey.values().stream().map(Product::name).toList();
  }

  private static String key(String name) {
    return Check.text("ProductList.name", name, "give a product's name")
        .strip()
        .toLowerCase(Locale.ROOT);
  }
}
