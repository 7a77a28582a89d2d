// The Compose screens, the same sources as on the JVM.
plugins {
    alias(libs.plugins.android.library)
    alias(libs.plugins.kotlin.android)
    alias(libs.plugins.kotlin.compose)
}

android {
    namespace = "lapwright.shell"
    compileSdk = 35
    defaultConfig { minSdk = 26 }
    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }
    // `src/test` is Maven's: it knows what those tests need.
    sourceSets["test"].setRoot("target/no-tests")
    // The bundled face: `font/regular.ttf` and `font/bold.ttf`.
    sourceSets["main"].assets.srcDir("target/generated/resources")
}

kotlin { jvmToolchain(17) }

dependencies {
    api(project(":bindings"))
    api(libs.compose.ui)
    api(libs.compose.foundation)
    implementation(libs.compose.material3)
}
