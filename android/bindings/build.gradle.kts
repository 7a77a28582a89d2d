// The generated Kotlin: `cargo xtask android` makes it.
plugins {
    alias(libs.plugins.android.library)
    alias(libs.plugins.kotlin.android)
}

android {
    namespace = "lapwright.core"
    compileSdk = 35
    defaultConfig { minSdk = 26 }
    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }
    // `src/test` is Maven's: it knows what those tests need.
    sourceSets["test"].setRoot("target/no-tests")
    sourceSets["main"].kotlin.srcDir("target/generated/kotlin")
}

kotlin { jvmToolchain(17) }

dependencies {
    api(libs.coroutines)
    // For a device JNA comes in Android's own packing, with its native part.
    implementation("${libs.jna.get()}@aar")
}
